import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseDowel } from '../../src/core/hanging/chooseDowel.ts';
import { dowelSag, softwood } from '../../src/core/hanging/dowelSag.ts';
import { finishingSteps } from '../../src/core/hanging/finishing.ts';
import { fringeOf } from '../../src/core/hanging/fringe.ts';
import { hangingOf } from '../../src/core/hanging/hanging.ts';
import { loopGroups } from '../../src/core/hanging/loopGroups.ts';
import type { Piece } from '../../src/core/model/piece.ts';
import { grams, mm } from '../../src/core/model/units.ts';
import { warpPlan } from '../../src/core/warp/warpPlan.ts';
import { lantern } from '../warp/lantern.ts';

/** The beam's bow found the long way: bending moment, then curvature, then slope, then height, summed in small steps. */
function integratedSag(lengthMm: number, loadGrams: number, diameterMm: number): number {
  const [length, thick] = [lengthMm / 1000, diameterMm / 1000];
  const mass = loadGrams / 1000 + softwood.density * ((Math.PI * thick ** 2) / 4) * length;
  const perMetre = (mass * 9.80665) / length;
  const stiffness = (softwood.stiffness * Math.PI * thick ** 4) / 64;
  const steps = 20_000;
  const step = length / 2 / steps;
  // From the middle, where the slope is nought, out to the end.
  let [slope, drop] = [0, 0];
  for (let index = 0; index < steps; index += 1) {
    const x = length / 2 + (index + 0.5) * step;
    const moment = (perMetre * x * (length - x)) / 2;
    slope += (moment / stiffness) * step;
    drop += slope * step;
  }
  return drop * 1000;
}

describe('the dowel', () => {
  it('an 8 in piece takes a dowel of about 8½ in (common practice, no source)', () => {
    const piece = lantern({ ends: 32 });
    expect(chooseDowel(piece, grams(150)).length / 25.4).toBeCloseTo(8.5, 2);
  });

  it('bows as a beam integrated step by step does', () => {
    for (const [span, load, diameter] of [
      [216, 150, 6],
      [900, 2500, 18],
      [1200, 400, 10],
    ] as const) {
      const sag = dowelSag(mm(span), grams(load), mm(diameter)).first;
      expect(Math.abs(sag / integratedSag(span, load, diameter) - 1)).toBeLessThan(1e-3);
    }
  });

  it('is the thinnest that stays within the allowed bow, and says when none does', () => {
    const piece = lantern();
    const dowel = chooseDowel(piece, grams(150));
    expect(dowel.sag.later).toBeLessThanOrEqual(piece.making.dowelSag);
    for (const diameter of [6, 8, 10, 12]) {
      const allowed = (share: number): Piece => ({
        ...piece,
        making: { ...piece.making, dowelSag: mm(dowelSag(dowel.length, grams(150), mm(diameter)).later * share) },
      });
      expect(chooseDowel(allowed(1.001), grams(150)).diameter).toBe(diameter);
      expect(chooseDowel(allowed(0.999), grams(150)).diameter).toBeGreaterThan(diameter);
    }
    const wide = lantern({ ends: 400, notches: 400 });
    expect(chooseDowel(wide, grams(20_000)).verdict.verdict).toBe('bows');
  });

  it('never gets thinner as the piece gets heavier', () => {
    const load = fc.double({ min: 10, max: 5_000, noNaN: true });
    fc.assert(
      fc.property(load, load, (one, other) => {
        const [light, heavy] = one < other ? [one, other] : [other, one];
        const diameter = (weight: number) => chooseDowel(lantern(), grams(weight)).diameter;
        expect(diameter(light)).toBeLessThanOrEqual(diameter(heavy));
      }),
    );
  });
});

describe('loops in groups', () => {
  it('hold every loop, near four each, none two larger than another, alike from both sides', () => {
    for (let loops = 1; loops <= 200; loops += 1) {
      const groups = loopGroups(loops);
      expect(groups.reduce((sum, size) => sum + size, 0)).toBe(loops);
      expect(Math.max(...groups) - Math.min(...groups)).toBeLessThanOrEqual(1);
      expect([...groups].reverse(), `${loops} loops`).toEqual(groups);
      if (loops > 8) expect(Math.abs(loops / groups.length - 4)).toBeLessThanOrEqual(2);
    }
  });
});

describe('hanging and finishing', () => {
  const piece = lantern();
  const hanging = hangingOf(piece, warpPlan(piece), grams(140));

  it('cuts a fringe no longer than the strings allow, and says so', () => {
    expect(hanging.fringe.length).toBe(40);
    expect(hanging.fringe.verdict.verdict).toBe('shorter-than-wished');
    const short = { ...piece, making: { ...piece.making, fringe: mm(30) } };
    expect(fringeOf(short)).toMatchObject({ length: 30, verdict: { verdict: 'as-wished' } });
  });

  it('cord goes up a third of the dowel and comes down again', () => {
    const { length } = hanging.dowel;
    expect(hanging.cord.length).toBeCloseTo(2 * Math.sqrt((length / 2) ** 2 + (length / 3) ** 2) + 200, 9);
  });

  it('ends with the header’s order reversed: three passes, then a row of twining (common practice, no source)', () => {
    const footed = { ...piece, cloth: { ...piece.cloth, footerPasses: 3 } };
    expect(finishingSteps(footed, hanging, 0, [])[0]?.step).toMatch(/^Weave 3 passes of footer, then twine one row/);
    expect(finishingSteps(piece, hanging, 0, [])[0]?.step).toMatch(/^Twine one row/);
  });

  it('lists every step with the piece’s own figures, and cautions where hands can be hurt', () => {
    const slit = { between: [7, 8] as const, fromPass: 40, toPass: 70, lengthMm: 31.8, remedy: 'Sew it.' };
    const steps = finishingSteps(piece, hanging, 24, [slit, { ...slit, lengthMm: 5 }]);
    const said = steps.map((step) => step.step).join('\n');
    expect(said).toContain('24 tails');
    expect(said).toContain('1 slit ');
    expect(said).toContain('32 mm');
    expect(steps.find((step) => step.step.includes('Cut the strings'))?.caution).toContain('Cut away');
    expect(steps.at(-2)?.caution).toContain('bed');
    expect(said).not.toContain('ornament');
  });
});
