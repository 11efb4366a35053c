import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  crimpFromTakeUp,
  peirceCrimp,
  takeUpFromCrimp,
  turnExtra,
  weftPerEnd,
} from '../../src/core/materials/weftCrimp.ts';
import { mm } from '../../src/core/model/units.ts';

/**
 * Peirce's equations as printed in N. Balasubramanian's notes (business.vsnl.com/balasubramanian/YarnCloth.html),
 * solved by halving: p = (l − Dθ) cos θ + D sin θ and h = (l − Dθ) sin θ + D (1 − cos θ).
 */
function solvePeirce(spacing: number, height: number): { angle: number; crimp: number; length: number } {
  const heightAt = (angle: number) => (spacing - Math.sin(angle)) * Math.tan(angle) + 1 - Math.cos(angle);
  let [low, high] = [0, Math.min(Math.PI / 2, Math.asin(Math.min(1, spacing)))];
  for (let halving = 0; halving < 200; halving += 1) {
    const middle = (low + high) / 2;
    if (heightAt(middle) < height) low = middle;
    else high = middle;
  }
  const length = (spacing - Math.sin(low)) / Math.cos(low) + low;
  return { angle: low, crimp: length / spacing - 1, length };
}

describe('the weft’s crimp over straight warp strings', () => {
  it.each([
    // p/D and c; derived from Peirce 1937, no page found printing the closed form.
    [1, 0.570796],
    [1.25, 0.341836],
    [1.5, 0.231841],
    [2, 0.127825],
    [2.5, 0.081122],
    [3, 0.056088],
    [4, 0.031416],
    [5, 0.020067],
  ])('at p/D = %d is %d, to a millionth', (ratio, expected) => {
    expect(Math.abs(peirceCrimp(ratio) - expected)).toBeLessThan(1e-6);
  });

  it('agrees with the printed equations solved by halving', () => {
    fc.assert(
      fc.property(fc.double({ min: 1.02, max: 20, noNaN: true }), (ratio) => {
        expect(Math.abs(solvePeirce(ratio, 1).crimp - peirceCrimp(ratio))).toBeLessThan(1e-9);
      }),
    );
  });

  it('the same solver gives the square jammed cloth: 60°, l/D 1.0472, c 0.2092 (Balasubramanian)', () => {
    const jammed = solvePeirce(Math.sqrt(3) / 2, 0.5);
    expect((jammed.angle * 180) / Math.PI).toBeCloseTo(60, 3);
    expect(jammed.length).toBeCloseTo(1.0472, 4);
    expect(jammed.crimp).toBeCloseTo(0.2092, 4);
    // GATE 2009 TF Q54 rounds it to 21 % (textiletriangle.com).
    expect(Math.abs(jammed.crimp * 100 - 21)).toBeLessThan(0.5);
  });

  it('stays within the sanity band of the 4/3 rule at p/D = 2', () => {
    expect(Math.abs((4 / 3) * 2 * Math.sqrt(peirceCrimp(2)) - 0.953)).toBeLessThan(1e-3);
  });

  it('10 % crimp is 9.09 % take-up, and back (ASTM D3883, ISO 7211-3; value from memory)', () => {
    expect(takeUpFromCrimp(0.1)).toBeCloseTo(0.0909, 4);
    expect(crimpFromTakeUp(takeUpFromCrimp(0.1))).toBeCloseTo(0.1, 12);
  });
});

describe('weft for one end', () => {
  const quarterInch = { pitch: mm(6.35), stringDiameter: mm(1.7), weftDiameter: mm(2.1) };

  it('over a single string is Peirce’s', () => {
    const single = weftPerEnd({ ...quarterInch, stringsPerEnd: 1 });
    expect(single.length).toBeCloseTo(6.35 * (1 + peirceCrimp(6.35 / 3.8)), 12);
    expect(single.crowded).toBe(false);
  });

  it('over a doubled end lies flat over one string’s width: d + (p − d)(1 + c((p − d)/D))', () => {
    const doubled = weftPerEnd({ ...quarterInch, stringsPerEnd: 2 });
    expect(doubled.length).toBeCloseTo(1.7 + 4.65 * (1 + peirceCrimp(4.65 / 3.8)), 12);
  });

  it('says when the weft crowds, and then gives the most it can', () => {
    const crowded = weftPerEnd({ ...quarterInch, weftDiameter: mm(4), stringsPerEnd: 2 });
    expect(crowded.crowded).toBe(true);
    expect(crowded.length).toBeCloseTo(1.7 + 4.65 * (Math.PI / 2), 12);
  });

  it('never asks for less weft than the cloth is wide, nor less than a climb at a turn', () => {
    const length = fc.double({ min: 0.2, max: 15, noNaN: true });
    fc.assert(
      fc.property(length, length, length, fc.constantFrom(1, 2), (pitch, string, weft, stringsPerEnd) => {
        const geometry = { pitch: mm(pitch), stringDiameter: mm(string), weftDiameter: mm(weft), stringsPerEnd };
        expect(weftPerEnd(geometry).length).toBeGreaterThanOrEqual(pitch);
        expect(turnExtra(geometry, mm(1))).toBeGreaterThanOrEqual(1);
      }),
    );
  });
});
