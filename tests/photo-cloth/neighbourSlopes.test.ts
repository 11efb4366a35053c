import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { neighbourSlopes } from '../../src/core/photo/neighbourSlopes.ts';

describe('lean of neighbouring ends', () => {
  it('finds out tracks that were led astray, and fills in ends that were not followed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.02, max: 0.02, noNaN: true }),
        fc.double({ min: -0.0006, max: 0.0006, noNaN: true }),
        fc.uniqueArray(fc.integer({ min: 1, max: 28 }), { minLength: 1, maxLength: 5 }),
        (start, perEnd, chosen) => {
          // Where most neighbours are led astray too nothing can be told: bad ones stand at least four ends apart.
          const bad = chosen.filter((end, k) => chosen.slice(0, k).every((other) => Math.abs(other - end) >= 4));
          const truth = Array.from({ length: 30 }, (_, end) => start + perEnd * end);
          const own = truth.map((slope, end) => {
            if (!bad.includes(end)) return { slope, sigma: 0.0015 };
            return end % 2 === 0 ? { slope: slope + 0.015, sigma: 0.0015 } : { slope: null, sigma: 1 };
          });
          const found = neighbourSlopes(own)!;
          for (const [end, slope] of truth.entries()) {
            expect(Math.abs(found[end]!.slope - slope)).toBeLessThan(0.004);
            expect(found[end]!.sigma).toBeGreaterThan(0);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('says less of an end that only its neighbours speak for', () => {
    const own = Array.from({ length: 15 }, (_, end) => ({
      slope: end === 7 ? null : 0,
      sigma: end === 7 ? 1 : 0.0005,
    }));
    const found = neighbourSlopes(own)!;
    expect(found[7]!.sigma).toBeGreaterThan(found[3]!.sigma);
  });

  it('has nothing to say where nothing was followed', () => {
    expect(neighbourSlopes([{ slope: null, sigma: 1 }])).toBeNull();
  });
});
