import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measurement } from '../../src/core/model/measurement.ts';
import { oneCourse } from '../../src/core/photo/oneCourse.ts';

const row = (y: number, x: number | null) => ({ y, x: x === null ? null : measurement(x, 0.2, 1, 'test') });
const heights = Array.from({ length: 50 }, (_, k) => 1 + 2 * k);

describe('a selvedge as one course', () => {
  it('keeps any course that a hand could have woven, gaps and all', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -0.25, max: 0.25, noNaN: true }), { minLength: 50, maxLength: 50 }),
        fc.uniqueArray(fc.integer({ min: 0, max: 49 }), { maxLength: 12 }),
        (leans, unseen) => {
          let x = 100;
          const rows = heights.map((y, k) => {
            x += 2 * leans[k]!;
            return row(y, unseen.includes(k) ? null : x);
          });
          expect(oneCourse(rows, () => 100)).toEqual(rows);
        },
      ),
      { numRuns: 80 },
    );
  });

  it('leaves out a stretch that follows something else, wherever it lies', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 2, max: 9 }),
        fc.constantFrom(-6, -4, 3, 5, 8),
        (from, length, aside) => {
          const astray = (k: number) => k >= from && k < from + length;
          const rows = heights.map((y, k) => row(y, 100 - 0.02 * y + (astray(k) ? aside : 0)));
          oneCourse(rows, () => 100).forEach((reading, k) => {
            expect(reading.x === null).toBe(astray(k));
          });
        },
      ),
      { numRuns: 80 },
    );
  });
});
