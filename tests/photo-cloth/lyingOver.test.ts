import { describe, expect, it } from 'vitest';
import type { EndReading } from '../../src/core/model/check.ts';
import { measurement } from '../../src/core/model/measurement.ts';
import type { Mm } from '../../src/core/model/units.ts';
import type { Beat } from '../../src/core/photo/beat.ts';
import { doubtUnwoven } from '../../src/core/photo/lyingOver.ts';
import type { WeaveLine } from '../../src/core/photo/weaveLines.ts';

const pass = 1.2;
const yStep = 0.2;
const top = 60;
const beat: Beat = {
  pass: measurement(pass, 0.01, 10, 'test'),
  rows: [],
  passesAt: (y) => y / pass,
  evenCrest: 0,
};

/**
 * Lightness up one end: floats swing once in two passes, up to where something plain lies over them.
 * @param rhythm of the swing, in floats' own.
 */
function line(end: number, plainFrom: number, light = 120, swing = 15, rhythm = 1): WeaveLine {
  const rows = Math.round(top / yStep);
  const colours = new Float32Array(rows * 3);
  for (let r = 0; r < rows; r++) {
    const y = r * yStep;
    const grain = 1.5 * Math.sin(12.9 * r + 78.2 * end);
    const floats = y < plainFrom ? swing * Math.cos(Math.PI * ((rhythm * y) / pass + end)) : 0;
    colours[r * 3] = light + floats + grain;
  }
  return { end, rows, yStep, colours };
}

const reading = (index: number): EndReading => ({
  index,
  seen: true,
  why: null,
  notchX: null,
  fell: measurement(top as Mm, 0.2, 1, 'test'),
  xAtFell: measurement(5 * index, 0.1, 1, 'test'),
  bow: null,
  runsTo: index,
});
const ends = Array.from({ length: 20 }, (_, end) => reading(end));
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

  it('can’t be told where light burns the yarn out, or where floats never show', () => {
    expect(unseen(ends.map(({ index }) => line(index, index === 4 ? 0 : top, index === 4 ? 240 : 120)))).toEqual([]);
    expect(unseen(ends.map(({ index }) => line(index, index % 2 === 0 ? 0 : top)))).toEqual([]);
  });
});
