import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalBelow } from '../../src/core/photo/normalCurve.ts';
import { fitStringProfile } from '../../src/core/photo/stringProfile.ts';

/** A blurred bar, its two grounds of unequal brightness, sampled across. */
function profile(centre: number, half: number, blur: number, left: number, core: number, right: number): Float64Array {
  const out = new Float64Array(3 * 41);
  for (let k = 0; k < 41; k++) {
    const u = -10 + 0.5 * k - centre;
    const l = 1 - normalBelow((u + half) / blur);
    const r = normalBelow((u - half) / blur);
    const value = left * l + core * (1 - l - r) + right * r;
    out.fill(value, 3 * k, 3 * k + 3);
  }
  return out;
}

// C. Steger, An unbiased detector of curvilinear structures, PAMI 20(2) 1998: unequal contrast on the two sides pulls
// a plain ridge maximum aside; the middle must come out without that pull.
describe('middle of a string', () => {
  it('is not drawn aside by unequal contrast', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -2, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 150, noNaN: true }),
        fc.double({ min: 0, max: 150, noNaN: true }),
        (centre, left, right) => {
          const found = fitStringProfile(profile(centre, 2.2, 1, left, 220, right), -10, 0.5, 2.2, 1, 0, 4);
          expect(found).not.toBeNull();
          expect(Math.abs(found!.centre - centre)).toBeLessThan(0.02);
        },
      ),
      { seed: 7 },
    );
  });

  it('stays true when the blur is guessed a third off, and where the plain maximum is far off', () => {
    const colours = profile(0.3, 2.2, 1.5, 20, 220, 160);
    const found = fitStringProfile(colours, -10, 0.5, 2.2, 1, 0, 4)!;
    expect(Math.abs(found.centre - 0.3)).toBeLessThan(0.12);
    let plain = 0;
    let moment = 0;
    for (let k = 0; k < 41; k++) {
      const weight = Math.max(0, colours[3 * k]! - 90);
      plain += weight * (-10 + 0.5 * k);
      moment += weight;
    }
    expect(Math.abs(plain / moment - 0.3)).toBeGreaterThan(0.5);
  });

  it('says how unsure it is: sigma grows with noise', () => {
    const noisy = (amount: number) => {
      const colours = profile(0, 2.2, 1, 60, 200, 60);
      for (let k = 0; k < colours.length; k++) colours[k]! += amount * Math.sin(12.9898 * (k + 1) ** 2);
      return fitStringProfile(colours, -10, 0.5, 2.2, 1, 0, 4)!.sigma;
    };
    expect(noisy(20)).toBeGreaterThan(3 * noisy(2));
  });
});
