import { describe, expect, it } from 'vitest';
import type { EndReading } from '../../src/core/model/check.ts';
import { measurement } from '../../src/core/model/measurement.ts';
import type { Mm } from '../../src/core/model/units.ts';
import type { Beat } from '../../src/core/photo/beat.ts';
import { doubtClothAbove } from '../../src/core/photo/clothAbove.ts';
import type { WeaveLine } from '../../src/core/photo/weaveLines.ts';

const pass = 1.2;
const yStep = 0.2;
const fell = 60;
const beat: Beat = {
  pass: measurement(pass, 0.01, 10, 'test'),
  rows: [],
  passesAt: (y) => y / pass,
  evenCrest: 0,
};

/** Lightness up one end and on above its fell: floats up to a height, then bare string with a rhythm of its own. */
function line(end: number, wovenTo: number, bare: (y: number) => number = () => 0): WeaveLine {
  const rows = Math.round((fell + 14) / yStep);
  const colours = new Float32Array(rows * 3);
  for (let r = 0; r < rows; r++) {
    const y = r * yStep;
    const grain = 1.5 * Math.sin(12.9 * r + 78.2 * end);
    colours[r * 3] = 120 + (y < wovenTo ? 15 * Math.cos(Math.PI * (y / pass + end)) : bare(y)) + grain;
  }
  return { end, rows, yStep, colours };
}

const ends = Array.from(
  { length: 20 },
  (_, index): EndReading => ({
    index,
    seen: true,
    why: null,
    notchX: null,
    fell: measurement(fell as Mm, 0.2, 1, 'test'),
    xAtFell: measurement(5 * index, 0.1, 1, 'test'),
    bow: null,
    runsTo: index,
  }),
);
const doubted = (lines: readonly WeaveLine[]): number[] =>
  doubtClothAbove(ends, lines, beat)
    .filter((end) => end.fell === null)
    .map((end) => end.index);

describe('cloth above an edge taken for the fell', () => {
  it('is told by floats that go on in step', () => {
    expect(doubted(ends.map(({ index }) => line(index, index === 7 ? fell + 11 : fell)))).toEqual([7]);
  });

  it('is not seen where bare string begins at the fell', () => {
    expect(doubted(ends.map(({ index }) => line(index, fell)))).toEqual([]);
  });

  it('is not taken from a mark on the string, from another rhythm, or where the table swings beside every end', () => {
    const mark = (y: number) => (y > fell + 3 && y < fell + 5 ? -80 : 0);
    const slow = (y: number) => 14 * Math.cos((0.7 * Math.PI * y) / pass);
    expect(doubted(ends.map(({ index }) => line(index, fell, index === 7 ? mark : undefined)))).toEqual([]);
    expect(doubted(ends.map(({ index }) => line(index, fell, index === 7 ? slow : undefined)))).toEqual([]);
    expect(doubted(ends.map(({ index }) => line(index, fell, slow)))).toEqual([]);
  });
});
