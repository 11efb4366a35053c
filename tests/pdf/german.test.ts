import { describe, expect, it } from 'vitest';
import { fullPiece } from './fullPiece.ts';
import { harbourLantern } from './samplePiece.ts';
import { sheets, written } from './written.ts';

const english =
  /\b(the|of|and|is|are|to|from|with|on|up|out|turns?|ends?|pass(es)?|strings?|by|block|row|column|page|at|each|not|mark|cut|yarn|edge|both|weft|notch|pitch)\b/i;

describe('printed sheets in German', () => {
  it.each(
    sheets.flatMap((sheet) => [
      [sheet, 'the sample', harbourLantern()] as const,
      [sheet, 'a full piece', fullPiece()] as const,
    ]),
  )('%s of %s has no English left, and commas in its figures', async (sheet, _, piece) => {
    const lines = await written(sheet, piece, 'de');
    expect(lines.length).toBeGreaterThan(20);
    // The weaver's own reason.
    const invented = /^Beiseitegelegt: /;
    expect(lines.filter((line) => english.test(line) && !invented.test(line))).toEqual([]);
    expect(lines.filter((line) => /\d\.\d/.test(line))).toEqual([]);
  });
});
