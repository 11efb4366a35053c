import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Whether poppler's pdftoppm is on this machine; sheets are drawn with it to be measured. */
export const canDraw = ((): boolean => {
  try {
    execFileSync('pdftoppm', ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
})();

export interface GreyPage {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** One page of a PDF as grey pixels. @param page 1-based. @param dpi pixels to the inch; 254 is ten to the millimetre. */
export function drawPage(pdf: Uint8Array, page: number, dpi: number): GreyPage {
  const folder = mkdtempSync(join(tmpdir(), 'sheet-'));
  try {
    writeFileSync(join(folder, 'sheet.pdf'), pdf);
    const [first, last] = [String(page), String(page)];
    execFileSync(
      'pdftoppm',
      [
        '-gray',
        '-aa',
        'no',
        '-aaVector',
        'no',
        '-r',
        String(dpi),
        '-f',
        first,
        '-l',
        last,
        '-singlefile',
        'sheet.pdf',
        'page',
      ],
      {
        cwd: folder,
      },
    );
    const bytes = readFileSync(join(folder, 'page.pgm'));
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'));
    if (head === null) throw new Error('not a grey picture');
    return { width: Number(head[1]), height: Number(head[2]), data: bytes.subarray(head[0].length) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The longest dark runs of one row of pixels: first pixel and length. */
export function darkRuns(page: GreyPage, row: number): { readonly from: number; readonly length: number }[] {
  const runs: { from: number; length: number }[] = [];
  for (let x = 0; x < page.width; ) {
    if (page.data[row * page.width + x]! > 110) {
      x++;
      continue;
    }
    const from = x;
    while (x < page.width && page.data[row * page.width + x]! <= 110) x++;
    runs.push({ from, length: x - from });
  }
  return runs;
}
