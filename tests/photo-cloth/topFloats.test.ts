import { expect, test } from 'vitest';
import { doubtTopFloats } from '../../src/core/photo/topFloats.ts';
import type { WeaveLine } from '../../src/core/photo/weaveLines.ts';
import { beat, endsAt, floats, pass, wovenLine } from '../support/wovenLine.ts';

const fell = 60;
/** Floats that stop short of what was taken for the fell by so many passes. */
const line = (end: number, short: number): WeaveLine =>
  wovenLine(end, fell, (y) => (y < fell - short * pass ? floats(end, y) : 0), 120, 0.4);
const ends = endsAt(14, fell);

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

test('a fell below which the last floats don’t keep step with the cloth is less sure, and stays', () => {
  const told = doubtTopFloats(
    ends,
    ends.map(({ index }) =>
      wovenLine(index, fell, (y) => floats(index, index === 6 && y > fell - 3.3 * pass ? y + pass : y), 120, 0.4),
    ),
    beat,
  );
  expect(told.every((end) => end.fell !== null)).toBe(true);
  expect(told.filter((end) => (end.fell?.sigma ?? 0) > pass).map((end) => end.index)).toEqual([6]);
});
