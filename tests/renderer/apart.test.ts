import fc from 'fast-check';
import { expect, it } from 'vitest';
import { apart } from '../../src/renderer/screens/check/apart.ts';

it('keeps marks that have room where they are', () => {
  expect(apart([40, 200, 390], 400)).toEqual([40, 200, 386]);
});

it('shows every mark of flags that lie above the picture', () => {
  expect(apart([-30, -28, 90], 400)).toEqual([14, 48, 90]);
});

it('never lets one mark hide another, nor leaves the picture while there is room', () => {
  const heights = fc.array(fc.integer({ min: -60, max: 660 }), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(heights, (given) => {
      const tops = apart(
        given.sort((one, other) => one - other),
        600,
      );
      for (const [at, top] of tops.entries()) {
        expect(top).toBeGreaterThanOrEqual(14);
        expect(top).toBeLessThanOrEqual(586);
        if (at > 0) expect(top - tops[at - 1]!).toBeGreaterThanOrEqual(34);
      }
    }),
  );
});
