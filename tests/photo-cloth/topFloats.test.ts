import { expect, test } from 'vitest';
import type { EndReading } from '../../src/core/model/check.ts';
import { measurement } from '../../src/core/model/measurement.ts';
import type { Mm } from '../../src/core/model/units.ts';
import type { Beat } from '../../src/core/photo/beat.ts';
import { doubtTopFloats } from '../../src/core/photo/topFloats.ts';
import type { WeaveLine } from '../../src/core/photo/weaveLines.ts';

const pass = 1.2;
const yStep = 0.2;
const fell = 60;
const beat: Beat = { pass: measurement(pass, 0.01, 10, 'test'), rows: [], passesAt: (y) => y / pass, evenCrest: 0 };

/** Lightness up one end to what was taken for its fell: floats that stop short of it by so many passes. */
function line(end: number, short: number): WeaveLine {
  const rows = Math.round(fell / yStep);
  const colours = new Float32Array(rows * 3);
  for (let r = 0; r < rows; r++) {
    const y = r * yStep;
    const floats = y < fell - short * pass ? 15 * Math.cos(Math.PI * (y / pass + end)) : 0;
    colours[r * 3] = 120 + floats + 0.4 * Math.sin(12.9 * r + 78.2 * end);
  }
  return { end, rows, yStep, colours };
}

const ends = Array.from(
  { length: 14 },
  (_, index): EndReading => ({
    index,
    seen: true,
    why: null,
    notchX: null,
    fell: measurement(fell as Mm, 0.2, 1, 'test'),
    xAtFell: null,
    bow: null,
    runsTo: index,
  }),
);

test('a fell that no float lies right below is doubted, and one that none lies below for a while isn’t one', () => {
  const told = doubtTopFloats(
    ends,
    ends.map(({ index }) => line(index, index === 4 ? 2.4 : index === 9 ? 4 : 0)),
    beat,
  );
  expect(told.filter((end) => end.fell === null).map((end) => end.index)).toEqual([9]);
  expect(told.filter((end) => (end.fell?.sigma ?? 0) > pass).map((end) => end.index)).toEqual([4]);
  expect(told.filter((end) => end.fell?.sigma === 0.2).length).toBe(ends.length - 2);
});
