import { describe, expect, it } from 'vitest';
import { doubtClothAbove } from '../../src/core/photo/clothAbove.ts';
import type { WeaveLine } from '../../src/core/photo/weaveLines.ts';
import { beat, endsAt, floats, pass, wovenLine } from '../support/wovenLine.ts';

const fell = 60;
/** Floats up to a height, then bare string with a rhythm of its own. */
const line = (end: number, wovenTo: number, bare: (y: number) => number = () => 0): WeaveLine =>
  wovenLine(end, fell + 14, (y) => (y < wovenTo ? floats(end, y) : bare(y)));
const ends = endsAt(20, fell);
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
