import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Piece } from '../../src/core/model/piece.ts';
import { clothMm, mm, radians } from '../../src/core/model/units.ts';
import { makeSheet, type SheetName } from '../../src/main/pdf/makeSheet.ts';
import { Pen } from '../../src/main/pdf/pen.ts';
import { sampleCheck } from './sampleCheck.ts';
import { harbourLantern } from './samplePiece.ts';

afterEach(() => vi.restoreAllMocks());

/** Everything a sheet writes, line by line, as it is drawn; the weaver's own words left out. */
async function written(sheet: SheetName, piece: Piece): Promise<readonly string[]> {
  const lines: string[] = [];
  const { text } = Pen.prototype;
  vi.spyOn(Pen.prototype, 'text').mockImplementation(function (this: Pen, words, x, y, style = {}) {
    if (!style.own) lines.push(this.speech.tell(words));
    text.call(this, words, x, y, style);
  });
  const check = sheet === 'report' ? sampleCheck() : null;
  const made = await makeSheet({ piece, sheet, paper: 'a4', language: 'de', check, photo: null });
  expect(made.ok).toBe(true);
  return lines;
}

const sheets: readonly SheetName[] = ['warping', 'order', 'cartoon', 'report', 'keys', 'arithmetic', 'finishing'];
const english =
  /\b(the|of|and|is|are|to|from|with|on|up|out|turns?|ends?|pass(es)?|strings?|by|block|row|column|page|at|each|not|mark|cut|yarn|edge|both|weft|notch|pitch)\b/i;

/** The sample with everything that is spoken of only where it is there: ornaments, inches, every kind of border. */
function fullPiece(): Piece {
  const piece = harbourLantern();
  const borders = ['slit', 'shared-end', 'interlocked', 'dovetailed'] as const;
  const at = { x: clothMm(0), y: clothMm(100) };
  return {
    ...piece,
    units: 'in',
    making: { ...piece.making, slitLimit: mm(5), hillLimit: mm(20), fringe: mm(100) },
    shapes: piece.shapes.map((shape, index) => ({ ...shape, boundary: borders[index % 4]!, singlePass: true })),
    ornaments: [
      {
        id: 'o1',
        kind: 'wrapped-flower',
        name: 'Blüte',
        at,
        yarn: piece.yarns[0]!.id,
        pegs: 8,
        formerDiameter: mm(40),
        wrapsPerPetal: 3,
        layers: 2,
        count: 3,
      },
      {
        id: 'o2',
        kind: 'felted-leaf',
        name: 'Blatt',
        at,
        colour: '#335533',
        length: mm(40),
        width: mm(15),
        thickness: mm(3),
        rotation: radians(0),
        count: 4,
      },
    ],
  };
}

describe('printed sheets in German', () => {
  it.each(
    sheets.flatMap((sheet) => [
      [sheet, 'the sample', harbourLantern()] as const,
      [sheet, 'a full piece', fullPiece()] as const,
    ]),
  )('%s of %s has no English left, and commas in its figures', async (sheet, _, piece) => {
    const lines = await written(sheet, piece);
    expect(lines.length).toBeGreaterThan(20);
    // The check of the tests holds a flag's advice that no check gives, and the weaver's own reason.
    const invented = /^Beat the right half on its own for two turns\.$|^Beiseitegelegt: /;
    expect(lines.filter((line) => english.test(line) && !invented.test(line))).toEqual([]);
    expect(lines.filter((line) => /\d\.\d/.test(line))).toEqual([]);
  });
});
