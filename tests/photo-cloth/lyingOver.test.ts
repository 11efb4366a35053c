import { describe, expect, it } from 'vitest';
import { doubtUnwoven } from '../../src/core/photo/lyingOver.ts';
import type { WeaveLine } from '../../src/core/photo/weaveLines.ts';
import { beat, endsAt, floats, wovenLine } from '../support/wovenLine.ts';

const top = 60;
/** Floats up to where something plain lies over them. @param rhythm of the swing, in floats' own. */
const line = (end: number, plainFrom: number, light = 120, swing = 15, rhythm = 1): WeaveLine =>
  wovenLine(end, top, (y) => (y < plainFrom ? floats(end, y, swing, rhythm) : 0), light);
const ends = endsAt(20, top);
const unseen = (lines: readonly WeaveLine[]): number[] =>
  doubtUnwoven(ends, lines, beat)
    .filter((end) => end.fell === null)
    .map((end) => end.index);

describe('what lies over the fell', () => {
  it('is told by the floats missing below it', () => {
    const card = (end: number) => end >= 12 && end < 17;
    const lines = ends.map(({ index }) => line(index, card(index) ? top - 9 : top));
    expect(unseen(lines)).toEqual([12, 13, 14, 15, 16]);
    expect(doubtUnwoven(ends, lines, beat)[12]!.why).toContain('no floats');
  });

  it('is told by grain that swings as floats do, but not in step with them', () => {
    const table = (end: number) => end === 6 || end === 7;
    const lines = ends.map(({ index }) => line(index, top, 120, table(index) ? 12 : 15, table(index) ? 1.1 : 1));
    expect(unseen(lines)).toEqual([6, 7]);
  });

  it('is not seen in cloth that is woven to the top', () => {
    expect(unseen(ends.map(({ index }) => line(index, top)))).toEqual([]);
  });

  it('is told where floats never show to far above all ends that show them', () => {
    const tall = 8;
    const lines = ends.map(({ index }) => (index === tall ? wovenLine(index, top + 40, () => 0) : line(index, top)));
    const read = ends.map((end) => (end.index === tall ? endsAt(tall + 1, top + 40)[tall]! : end));
    const unseenEnds = doubtUnwoven(read, lines, beat).filter((end) => end.fell === null);
    expect(unseenEnds.map((end) => end.index)).toEqual([tall]);
  });

  it('is told where most ends were read far up on bare string', () => {
    const woven = (end: number) => end % 3 === 0;
    const tall = top + 90;
    const lines = ends.map(({ index }) => (woven(index) ? line(index, top) : wovenLine(index, tall, () => 0)));
    const read = ends.map((end) => (woven(end.index) ? end : endsAt(20, tall)[end.index]!));
    const believed = doubtUnwoven(read, lines, beat).filter((end) => end.fell !== null);
    expect(believed.map((end) => end.index)).toEqual(ends.map(({ index }) => index).filter(woven));
  });

  it('can’t be told where light burns the yarn out, or where floats never show', () => {
    expect(unseen(ends.map(({ index }) => line(index, index === 4 ? 0 : top, index === 4 ? 240 : 120)))).toEqual([]);
    expect(unseen(ends.map(({ index }) => line(index, index % 2 === 0 ? 0 : top)))).toEqual([]);
  });
});
