import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { PDFDocument } from 'pdf-lib';

export interface Printed {
  readonly name: string;
  readonly title: string;
  /** Paper of every page, mm. */
  readonly pages: readonly { readonly width: number; readonly height: number }[];
  /** What stands on every page; null where this machine has no pdftotext. */
  readonly words: readonly string[] | null;
}

const millimetres = (points: number) => (points * 25.4) / 72;

/** The sheet that `ask` makes, as it lands in the weaver's downloads. */
export async function printed(page: Page, ask: () => Promise<unknown>): Promise<Printed> {
  const [download] = await Promise.all([page.waitForEvent('download'), ask()]);
  const path = await download.path();
  const document = await PDFDocument.load(readFileSync(path), { updateMetadata: false });
  return {
    name: download.suggestedFilename(),
    title: document.getTitle() ?? '',
    pages: document.getPages().map((sheet) => ({
      width: millimetres(sheet.getWidth()),
      height: millimetres(sheet.getHeight()),
    })),
    words: wordsOf(path),
  };
}

function wordsOf(path: string): readonly string[] | null {
  try {
    const text = execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' });
    return text.split('\f').slice(0, -1);
  } catch (trouble) {
    if ((trouble as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw trouble;
  }
}
