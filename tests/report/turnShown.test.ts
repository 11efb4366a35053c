import { expect, test } from 'vitest';
import type { LoomReading } from '../../src/core/model/check.ts';
import { measurement } from '../../src/core/model/measurement.ts';
import { planPiece } from '../../src/core/plan/planPiece.ts';
import { turnShown } from '../../src/core/report/turnShown.ts';
import { fellAfter, passesOfTurns, workTurns } from '../../src/core/report/workTurns.ts';
import { sampleCheck } from '../pdf/sampleCheck.ts';
import { harbourLantern } from '../pdf/samplePiece.ts';

const piece = harbourLantern();
const { blocks, sequence, chart } = planPiece(piece);
const turns = workTurns(blocks, sequence);
const shown = (reading: LoomReading) => turnShown(reading, turns, blocks, chart.ends);
const moment = (reading: LoomReading) => {
  const found = shown(reading);
  if (found?.kind !== 'moment') throw new Error(`${found?.kind} instead of a moment`);
  return found;
};

/** A photograph of the cloth after so many turns, its passes a little higher than planned. */
function after(done: number, passMm = 1.1, fellOf = (height: number, _end: number) => height): LoomReading {
  const fell = fellAfter(turns, blocks, chart.ends, passesOfTurns(turns, done));
  const one = (value: number, sigma: number) => measurement(value, sigma, 1, 'test');
  return {
    ...sampleCheck().reading,
    pass: one(passMm, 0.001),
    ends: [...fell].map((passes, index) => ({
      index,
      seen: true,
      why: null,
      notchX: null,
      fell: one(fellOf(passes * passMm, index), 0.2),
      xAtFell: null,
      bow: null,
      runsTo: null,
    })),
  };
}

test('the moment of the order that a photograph shows is found within its own give or take', () => {
  for (const done of [3, 40, 90, 135, 200, turns.length]) {
    const found = moment(after(done));
    expect(Math.abs(found.turns - done), `${done} turns`).toBeLessThanOrEqual(2 * found.sigmaTurns);
    expect(found.least).toBeLessThanOrEqual(done);
    expect(found.sigmaTurns).toBeLessThan(6);
  }
});

test('what one end was read wrongly by does not move it, nor an end that was not seen', () => {
  const done = 120;
  const wrong = after(done, 1.1, (height, end) => (end === 7 ? height + 60 : height));
  const ends = wrong.ends.map((end) => (end.index === 20 ? { ...end, seen: false, fell: null } : end));
  expect(Math.abs(moment({ ...wrong, ends }).turns - done)).toBeLessThanOrEqual(2);
});

test('bare strings and passes that were not read show no place; cloth woven in another order is told from both', () => {
  expect(shown(after(0))).toBeNull();
  expect(shown({ ...after(120), pass: null })).toBeNull();
  // One half woven to the top, the other hardly begun.
  expect(shown(after(120, 1.1, (_, end) => (end < chart.ends / 2 ? 8 : 200)))).toEqual({ kind: 'other-order' });
});

test('the newest check of the sample stands where its truth does', () => {
  const { reading } = sampleCheck();
  const found = moment(reading);
  const fell = fellAfter(turns, blocks, chart.ends, passesOfTurns(turns, found.turns));
  const { value } = reading.pass!;
  const off = reading.ends.flatMap((end) => (end.fell ? [Math.abs(end.fell.value / value - fell[end.index]!)] : []));
  expect(off.reduce((sum, each) => sum + each, 0) / off.length).toBeLessThan(2);
});
