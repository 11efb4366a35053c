import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Yarn } from '../../src/core/model/piece.ts';
import { grams, metres, mm, tex } from '../../src/core/model/units.ts';
import { convertSize, texFromSize } from '../../src/core/yarn/countSystems.ts';
import { linearDensity } from '../../src/core/yarn/linearDensity.ts';
import {
  ashenhurst,
  ashenhurstDiameter,
  ashenhurstSett,
  packedDiameter,
  peirceDiameter,
  texFromPackedDiameter,
} from '../../src/core/yarn/packing.ts';
import { categoriesFromWraps, diameterFromCategory, texFromCategory } from '../../src/core/yarn/yarnCategory.ts';
import { weftDiameter, yarnDiameter } from '../../src/core/yarn/yarnDiameter.ts';

const yarn = (known: Partial<Yarn>): Yarn => ({
  id: 'y0',
  name: 'Ink wool',
  colour: '#2d3350',
  fibre: 'wool',
  count: null,
  label: null,
  wrapsPerCm: null,
  diameter: null,
  category: null,
  strands: 1,
  ballGrams: null,
  ...known,
});

describe('diameter by packing', () => {
  it.each([
    // Derived from Peirce 1937: d = 1/(28 √Ne) inch; the 28 itself is a value from memory.
    [4, 0.4536],
    [16, 0.2268],
    [30, 0.1656],
  ])('Peirce: Ne %d is %d mm thick', (count, expected) => {
    // The printed figures have four places, so half a unit of the last is allowed with the 1e-4.
    expect(Math.abs(peirceDiameter(texFromSize('cotton-ne', count)) - expected)).toBeLessThan(expected * 1e-4 + 5e-5);
  });

  it('Peirce: d = 0.03733 √tex mm', () => {
    expect(Math.abs(peirceDiameter(tex(400)) / (0.03733 * 20) - 1)).toBeLessThan(1e-4);
  });

  it('Peirce: 34.14 √(v/Ne) thousandths of an inch, at 1.1 cm³/g, to half a hundredth (Balasubramanian)', () => {
    for (const count of [4, 16, 30]) {
      const printed = (34.14 * Math.sqrt(1.1 / count) * 25.4) / 1000;
      expect(Math.abs(peirceDiameter(texFromSize('cotton-ne', count)) / printed - 1)).toBeLessThan(0.005);
    }
  });

  it.each([
    // schoolofsweetgeorgia.com prints 0.236, 0.25 and 0.255; these are the exact equivalents, derived.
    [0.85, 0.2357],
    [0.9, 0.2496],
    [0.91, 0.2524],
  ])('Ashenhurst: k = %d is %d √(m/kg) diameters to the centimetre', (k, perCentimetre) => {
    const metresPerKilo = 3225.5;
    const diameter = ashenhurstDiameter(texFromSize('metres-per-100-g', metresPerKilo / 10), k);
    expect(Math.abs(10 / diameter / Math.sqrt(metresPerKilo) - perCentimetre)).toBeLessThan(1e-4);
  });

  it('Ashenhurst: 8/2 cotton at 3,360 yd/lb has 52 diameters to the inch; 26 ends plain, 34.8 in 2/2 twill', () => {
    // faena.medievaltextiles.org/ash.html; peggyosterkamp.com. Tolerance ±0.5.
    const diameter = ashenhurstDiameter(texFromSize('yards-per-pound', 3360), ashenhurst.firm);
    expect(25.4 / diameter).toBeCloseTo(52.17, 2);
    expect(Math.abs(ashenhurstSett(diameter, 2, 2) - 26)).toBeLessThan(0.5);
    expect(ashenhurstSett(diameter, 4, 2)).toBeCloseTo(34.8, 1);
  });

  it('Ashenhurst: 8/4 at 1,600 yd/lb is 0.706 mm, worsted wool at 900 yd/lb 1.008 mm', () => {
    expect(ashenhurstDiameter(texFromSize('yards-per-pound', 1600), ashenhurst.firm)).toBeCloseTo(0.706, 3);
    expect(packedDiameter(texFromSize('yards-per-pound', 900), 'wool').diameter).toBeCloseTo(1.008, 3);
  });

  it('half the wraps is a plain-weave sett, and ÷ 0.7 comes near Ashenhurst (weaving.cc, P. Osterkamp, Jan 2004)', () => {
    const wraps = 10;
    expect(ashenhurstSett(mm(25.4 / wraps), 2, 2)).toBeCloseTo(5, 9);
    expect(Math.round(ashenhurstSett(mm(25.4 / wraps), 2, 2) / 0.7)).toBe(7);
  });

  it('goes back from thickness to linear density', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 5000, noNaN: true }),
        fc.constantFrom('wool', 'cotton', 'linen', 'silk', 'other'),
        (density, fibre) => {
          const { diameter } = packedDiameter(tex(density), fibre);
          expect(texFromPackedDiameter(diameter, fibre) / density).toBeCloseTo(1, 9);
        },
      ),
    );
  });
});

describe('yarn-weight categories', () => {
  it('medium is 800 to 1,000 yd/lb, so 496 to 620 tex and 161 to 202 m/100 g (knititnow.com)', () => {
    const medium = texFromCategory(4);
    expect(medium?.low).toBeCloseTo(496, 0);
    expect(medium?.high).toBeCloseTo(620, 0);
    expect(convertSize(medium?.high ?? 0, 'tex', 'metres-per-100-g')).toBeCloseTo(161, 0);
    expect(convertSize(medium?.low ?? 0, 'tex', 'metres-per-100-g')).toBeCloseTo(202, 0);
  });

  it.each([
    // knititnow.com, citing YarnStandards.com; medium is above.
    [0, 4000, 10_000],
    [1, 3000, 4000],
    [2, 2000, 3000],
    [3, 1000, 2000],
    [5, 500, 800],
    [6, 100, 500],
  ])('category %d is %d to %d yd/lb', (category, low, high) => {
    const found = texFromCategory(category);
    expect(convertSize(found?.high ?? 0, 'tex', 'yards-per-pound')).toBeCloseTo(low, 6);
    expect(convertSize(found?.low ?? 0, 'tex', 'yards-per-pound')).toBeCloseTo(high, 6);
  });

  it.each([
    // Craft Yarn Council, as reproduced at ihookdesign.com/what-is-wpi.
    [0, 30, 40],
    [1, 14, 30],
    [2, 12, 18],
    [3, 11, 15],
    [4, 9, 12],
    [5, 6, 9],
    [6, 5, 6],
    [7, 1, 4],
  ])('category %d is %d to %d wraps to the inch', (category, low, high) => {
    for (const wraps of [low, (low + high) / 2, high]) expect(categoriesFromWraps(wraps)).toContain(category);
    expect(categoriesFromWraps(low - 0.5)).not.toContain(category);
    // Lace has no upper bound.
    expect(categoriesFromWraps(high + 0.5).includes(category)).toBe(category === 0);
    expect(25.4 / (diameterFromCategory(category)?.low ?? 0)).toBeCloseTo(high, 9);
    expect(25.4 / (diameterFromCategory(category)?.high ?? 0)).toBeCloseTo(low, 9);
  });

  it('overlap: 12 wraps to the inch may be category 2, 3 or 4 (Craft Yarn Council, at ihookdesign.com)', () => {
    expect(categoriesFromWraps(12)).toEqual([2, 3, 4]);
    expect(categoriesFromWraps(10)).toEqual([4]);
    expect(categoriesFromWraps(45)).toEqual([0]);
  });

  it('say that they are guesses, and give no yardage for jumbo', () => {
    expect(linearDensity(yarn({ category: 4 }))).toMatchObject({ from: 'category', guess: true });
    expect(yarnDiameter(yarn({ category: 4 }))).toMatchObject({ from: 'category', guess: true });
    expect(linearDensity(yarn({ category: 7 }))).toBeNull();
    expect(diameterFromCategory(7)?.low).toBeCloseTo(6.35, 9);
    expect(diameterFromCategory(8)).toBeNull();
  });
});

describe('what is known of a yarn', () => {
  const label = { metres: metres(160), grams: grams(100) };
  const count = { system: 'cotton-ne', size: 8, plies: 4 } as const;

  it('lets the label override the count: 8/4 is 1,680 yd/lb by count, sold as 1,600', () => {
    const sold = { metres: metres((1600 * 0.9144) / 1), grams: grams(453.59237) };
    const byCount = linearDensity(yarn({ fibre: 'cotton', count }));
    const byLabel = linearDensity(yarn({ fibre: 'cotton', count, label: sold }));
    expect(byCount?.from).toBe('count');
    expect(byLabel?.from).toBe('label');
    const kept = (byCount?.tex ?? 0) / (byLabel?.tex ?? 0);
    expect(kept).toBeCloseTo(1600 / 1680, 9);
    // Plied yarn is about 5 % shorter than its count says (oocities.org, rugtalk, yarn sizes).
    expect(Math.abs((1 - kept) * 100 - 5)).toBeLessThan(0.5);
  });

  it('takes a measured diameter first, then wraps, then packing', () => {
    const all = { diameter: mm(2.2), wrapsPerCm: 5, label };
    expect(yarnDiameter(yarn(all))).toMatchObject({ diameter: 2.2, from: 'diameter' });
    expect(yarnDiameter(yarn({ ...all, diameter: null }))).toMatchObject({ diameter: 2, from: 'wraps' });
    expect(yarnDiameter(yarn({ label }))?.from).toBe('label');
    expect(yarnDiameter(yarn({}))).toBeNull();
    expect(linearDensity(yarn({}))).toBeNull();
  });

  it('is no guess where a label or a count says, and a guess where only thickness does', () => {
    expect(linearDensity(yarn({ label }))).toMatchObject({ tex: 625, guess: false });
    expect(linearDensity(yarn({ wrapsPerCm: 5 }))).toMatchObject({ from: 'wraps', guess: true });
  });

  it('adds the areas of strands woven together', () => {
    expect(weftDiameter(yarn({ diameter: mm(1), strands: 4 }))?.diameter).toBeCloseTo(2, 12);
  });
});
