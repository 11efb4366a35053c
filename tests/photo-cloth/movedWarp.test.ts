import fc from 'fast-check';
import { expect, test } from 'vitest';
import { movedBy } from '../../src/core/photo/movedWarp.ts';

test('a warp that stands notches aside is told from one with ends missing', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 12, max: 60 }),
      fc.integer({ min: -6, max: 6 }),
      fc.option(fc.integer({ min: 0, max: 11 })),
      (ends, by, missing) => {
        const seen = Array.from({ length: ends + 14 }, (_, k) => k - 7).map((place) => ({
          place,
          present: place - by >= 0 && place - by < ends && place - by !== missing,
          why: null,
        }));
        // A missing end beside the edge may as well be a shift by one: that is left open.
        fc.pre(missing === null || (missing > 2 && missing < ends - 3 && Math.abs(by) !== 1));
        expect(movedBy(seen, ends)).toBe(by);
      },
    ),
    { numRuns: 200 },
  );
});

test('and where nothing can be seen of the notches the warp has left', () => {
  for (const by of [-6, -3, 3, 6]) {
    const seen = Array.from({ length: 38 + 14 }, (_, k) => k - 7)
      .map((place) => ({ place, present: place - by >= 0 && place - by < 38, why: null }))
      // A sheet lies there: notches under it are left out.
      .filter(({ place }) => (by < 0 ? place <= 37 + by + 1 : place >= by - 1));
    expect(movedBy(seen, 38)).toBe(by);
  }
});
