import { expect, test } from 'vitest';
import { makeChart } from '../../src/core/chart/makeChart.ts';
import { liesMirrored } from '../../src/core/compare/mirroredPicture.ts';
import { harbourLantern as harbourLanternPiece } from '../pdf/samplePiece.ts';

const harbourLantern = harbourLanternPiece();
const { chart } = makeChart(harbourLantern);
const rows = Array.from({ length: chart.passes }, (_, pass) =>
  Array.from({ length: chart.ends }, (_, end) => chart.cells[pass * chart.ends + end]!),
);
const halfWoven = rows.slice(0, Math.floor(rows.length * 0.6));
const turned = (list: readonly (readonly number[])[]) => list.map((row) => [...row].reverse());

test('a cloth whose colours lie as in the plan’s mirror image is noticed, and only such a cloth', () => {
  expect(liesMirrored({ rows: halfWoven, share: 1 }, harbourLantern)).toBe(false);
  expect(liesMirrored({ rows: turned(rows), share: 1 }, harbourLantern)).toBe(true);
  expect(liesMirrored(null, harbourLantern)).toBe(false);
  // Too little of it woven to say.
  expect(liesMirrored({ rows: turned(rows).slice(0, 2), share: 1 }, harbourLantern)).toBe(false);
});
