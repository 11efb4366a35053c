import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LONGEST_PERIOD, type Run, repeatedRuns } from '../../src/core/schedule/repeatedRuns.ts';

const expanded = (keys: readonly string[], runs: readonly Run[]) =>
  runs.flatMap(({ from, period, times }) =>
    Array.from({ length: times }, () => keys.slice(from, from + period)).flat(),
  );

const letter = fc.constantFrom('a', 'b', 'c', 'd');
/** Groups of up to eight, each so many times over: what a finder of runs is meant for. */
const groups = fc.array(
  fc.record({
    group: fc.array(letter, { minLength: 1, maxLength: LONGEST_PERIOD }),
    times: fc.integer({ min: 1, max: 6 }),
  }),
  { maxLength: 6 },
);
const woven = (each: readonly { group: readonly string[]; times: number }[]) =>
  each.flatMap(({ group, times }) => Array.from({ length: times }, () => group).flat());
const reads = (runs: readonly { period: number }[]) => runs.reduce((sum, { period }) => sum + period + 1, 0);

describe('runs that repeat', () => {
  it('give back the list item by item, whatever repeats in it', () => {
    fc.assert(
      fc.property(groups, (made) => {
        const keys = woven(made);
        expect(expanded(keys, repeatedRuns(keys))).toEqual(keys);
      }),
      { numRuns: 500 },
    );
  });

  it('follow one another without a gap, and a group of several always repeats', () => {
    fc.assert(
      fc.property(groups, (made) => {
        const keys = woven(made);
        let next = 0;
        for (const { from, period, times } of repeatedRuns(keys)) {
          expect(from).toBe(next);
          expect(period).toBeLessThanOrEqual(LONGEST_PERIOD);
          expect(times).toBeGreaterThan(period === 1 ? 0 : 1);
          next += period * times;
        }
        expect(next).toBe(keys.length);
      }),
    );
  });

  it('never leave more to read than the groups the list was made of', () => {
    fc.assert(
      fc.property(groups, (made) => {
        // A group that comes once is read item by item.
        const told = made.flatMap(({ group, times }) =>
          times === 1 ? group.map(() => ({ period: 1 })) : [{ period: group.length }],
        );
        expect(reads(repeatedRuns(woven(made)))).toBeLessThanOrEqual(reads(told));
      }),
      { numRuns: 500 },
    );
  });

  it('are one run for a group of any size up to eight', () => {
    for (let period = 1; period <= LONGEST_PERIOD; period++) {
      const group = Array.from({ length: period }, (_, at) => `${at}`);
      expect(repeatedRuns([...group, ...group, ...group])).toEqual([{ from: 0, period, times: 3 }]);
    }
  });

  it('begin to repeat as early as they can', () => {
    expect(repeatedRuns([...'abababa'])).toEqual([
      { from: 0, period: 2, times: 3 },
      { from: 6, period: 1, times: 1 },
    ]);
  });
});
