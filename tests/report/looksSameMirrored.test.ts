import { expect, test } from 'vitest';
import { planPiece } from '../../src/core/plan/planPiece.ts';
import { looksSameMirrored } from '../../src/core/report/looksSameMirrored.ts';
import { harbourLantern } from '../pdf/samplePiece.ts';

const piece = harbourLantern();
const { chart } = planPiece(piece);

test('a lantern in the middle of the warp, and that in the middle of the loom, looks the same turned over', () => {
  expect(looksSameMirrored(piece, chart)).toBe(true);
});

test('one that stands aside does not, nor one whose warp is off the middle', () => {
  const cells = chart.cells.slice();
  for (let pass = 40; pass < 80; pass++) cells.fill(2, pass * chart.ends, pass * chart.ends + 6);
  expect(looksSameMirrored(piece, { ...chart, cells })).toBe(false);
  const aside = { ...piece, warp: { ...piece.warp, firstNotch: piece.warp.firstNotch + 1 } };
  expect(looksSameMirrored(aside, chart)).toBe(false);
});
