import { expect, vi } from 'vitest';
import type { CheckRecord } from '../../src/core/model/check.ts';
import type { Piece } from '../../src/core/model/piece.ts';
import type { LanguageName } from '../../src/core/words/telling.ts';
import { makeSheet, type SheetName } from '../../src/main/pdf/makeSheet.ts';
import { Pen } from '../../src/main/pdf/pen.ts';
import { everyFlag } from '../support/everyFlag.ts';
import { sampleCheck } from './sampleCheck.ts';

export const sheets: readonly SheetName[] = [
  'warping',
  'order',
  'cartoon',
  'report',
  'keys',
  'arithmetic',
  'finishing',
];

/** The check of the tests with every flag there is; the second was put aside. */
export function fullyFlagged(piece: Piece): CheckRecord {
  const check = sampleCheck();
  return { ...check, reading: { ...check.reading, flags: everyFlag(check.reading, piece) } };
}

/** Everything a sheet writes, line by line, as it is drawn; the weaver's own words left out. */
export async function written(sheet: SheetName, piece: Piece, language: LanguageName): Promise<readonly string[]> {
  const lines: string[] = [];
  const { text } = Pen.prototype;
  const watched = vi.spyOn(Pen.prototype, 'text').mockImplementation(function (this: Pen, words, x, y, style = {}) {
    if (!style.own) lines.push(this.speech.tell(words));
    text.call(this, words, x, y, style);
  });
  const check = sheet === 'report' ? fullyFlagged(piece) : null;
  const made = await makeSheet({ piece, sheet, paper: 'a4', language, check, photo: null });
  watched.mockRestore();
  expect(made.ok).toBe(true);
  return lines;
}
