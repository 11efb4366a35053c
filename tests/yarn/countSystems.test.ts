import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CountSystem } from '../../src/core/model/piece.ts';
import { tex } from '../../src/core/model/units.ts';
import {
  convertSize,
  countFromTex,
  sizeFromTex,
  TEX_YARDS_PER_POUND,
  texFromCount,
  texFromSize,
  yarnCountInWords,
} from '../../src/core/yarn/countSystems.ts';

const systems: readonly CountSystem[] = [
  'tex',
  'metric-nm',
  'cotton-ne',
  'worsted-nw',
  'linen-lea',
  'woollen-run',
  'yards-per-pound',
  'metres-per-100-g',
];
const relative = (actual: number, expected: number) => Math.abs(actual / expected - 1);
const yardsPerPound = (system: CountSystem, size: number, plies: number) =>
  sizeFromTex('yards-per-pound', texFromCount({ system, size, plies }));

/** ASTM D2260-03(2013), Table 1, consistent with ISO 2947; 1 yd = 0.9144 m and 1 lb = 0.45359237 kg exactly. */
describe('count systems (ASTM D2260-03(2013), Table 1)', () => {
  it.each([
    ['cotton-ne', 590.541],
    ['worsted-nw', 885.812],
    ['linen-lea', 1653.52],
  ] as const)('%s from tex is %d / tex', (system, constant) => {
    for (const density of [7.4, 30, 147.64, 2000]) {
      expect(relative(sizeFromTex(system, tex(density)), constant / density)).toBeLessThan(1e-5);
    }
  });

  it('yards per pound from the metric count is 496.055 × Nm', () => {
    expect(relative(convertSize(1, 'metric-nm', 'yards-per-pound'), 496.055)).toBeLessThan(1e-5);
  });

  it('keeps the exact ratios of the hank systems', () => {
    expect(convertSize(1, 'cotton-ne', 'worsted-nw')).toBeCloseTo(1.5, 12);
    expect(convertSize(1, 'cotton-ne', 'linen-lea')).toBeCloseTo(2.8, 12);
    expect(convertSize(1, 'cotton-ne', 'woollen-run')).toBeCloseTo(0.525, 12);
    for (const [system, yards] of [
      ['cotton-ne', 840],
      ['worsted-nw', 560],
      ['woollen-run', 1600],
      ['linen-lea', 300],
    ] as const) {
      expect(convertSize(1, system, 'yards-per-pound')).toBeCloseTo(yards, 9);
    }
  });

  it('reproduces both worked examples', () => {
    expect(convertSize(10, 'cotton-ne', 'worsted-nw')).toBeCloseTo(15, 12);
    expect(Math.abs(convertSize(30, 'tex', 'cotton-ne') - 19.7)).toBeLessThan(0.05);
    expect(convertSize(30, 'tex', 'cotton-ne')).toBeCloseTo(19.685, 3);
  });

  it('derives tex × yd/lb and metres per kilogram of one yd/lb', () => {
    expect(relative(TEX_YARDS_PER_POUND, 496_054.648)).toBeLessThan(1e-6);
    expect(relative(convertSize(1, 'yards-per-pound', 'metres-per-100-g') * 10, 2.015907)).toBeLessThan(1e-6);
  });
});

/** NIMI trade textbook "Shawl Weaving Artisan - TT", pp. 69-70. */
describe('worked conversions (NIMI, Shawl Weaving Artisan, pp. 69-70)', () => {
  it.each([
    [40, 'metric-nm', 'cotton-ne', 23.62, 0.005],
    [24, 'metric-nm', 'cotton-ne', 14.172, 0.002],
    [80, 'metric-nm', 'worsted-nw', 70.864, 0.005],
    [20, 'cotton-ne', 'linen-lea', 56, 1e-9],
  ] as const)('%d %s is %s %d', (size, from, to, expected, tolerance) => {
    expect(Math.abs(convertSize(size, from, to) - expected)).toBeLessThan(tolerance);
  });

  it('2/48 Nm is 24 Nm as a whole', () => {
    expect(sizeFromTex('metric-nm', texFromCount({ system: 'metric-nm', size: 48, plies: 2 }))).toBeCloseTo(24, 12);
  });

  it('80 yd of worsted weighing 50 grains is 20s (7,000 grains to the pound)', () => {
    expect(convertSize(80 / (50 / 7000), 'yards-per-pound', 'worsted-nw')).toBeCloseTo(20, 9);
  });
});

describe('plied yarns', () => {
  it.each([
    // hmwg.org (S. Ableman) prints the yards; metres and tex follow from them.
    ['cotton-ne', 8, 2, 3360, 6773.4, 147.64],
    ['cotton-ne', 10, 2, 4200, 8466.8, 118.11],
    // blog.yarn.com (Barbara Elkins) prints the yards.
    ['cotton-ne', 3, 2, 1260, 2540, 393.7],
    // textileindonesia.com prints the yards by count.
    ['cotton-ne', 8, 4, 1680, 3386.7, 295.27],
    // By count arithmetic: cotton 8/8 and seine twine 12/6, 12/9, 12/12, 12/15.
    ['cotton-ne', 8, 8, 840, 1693.4, 590.54],
    ['cotton-ne', 12, 6, 1680, 3386.7, 295.3],
    ['cotton-ne', 12, 9, 1120, 2257.8, 442.9],
    ['cotton-ne', 12, 12, 840, 1693.4, 590.5],
    ['cotton-ne', 12, 15, 672, 1354.7, 738.2],
  ] as const)('%s %d/%d holds %d yd/lb', (system, size, plies, yards, metresPerKilo, density) => {
    expect(yardsPerPound(system, size, plies)).toBeCloseTo(yards, 6);
    // Printed to one decimal.
    expect(Math.abs(1e6 / texFromCount({ system, size, plies }) - metresPerKilo)).toBeLessThan(0.051);
    expect(relative(texFromCount({ system, size, plies }), density)).toBeLessThan(1e-4);
  });

  it('20/2 linen is 3,000 yd/lb and 2/10 worsted 2,800 (blog.yarn.com)', () => {
    expect(yardsPerPound('linen-lea', 20, 2)).toBeCloseTo(3000, 6);
    expect(yardsPerPound('worsted-nw', 10, 2)).toBeCloseTo(2800, 6);
  });

  it('4,200 yd/lb plied twice is 2,100, where one page prints 2,400 by mistake', () => {
    expect(yardsPerPound('yards-per-pound', 4200, 2)).toBeCloseTo(2100, 9);
  });

  it('1,600 yd/lb as sold is 3,225.5 m/kg and 310.0 tex', () => {
    expect(relative(convertSize(1600, 'yards-per-pound', 'tex'), 310)).toBeLessThan(2e-4);
    expect(relative(convertSize(1600, 'yards-per-pound', 'metres-per-100-g') * 10, 3225.5)).toBeLessThan(2e-5);
  });

  it('Aubusson cotton 10/11 is 909.09 m/kg and wool 2/20 is 10,000 (craeft.eu, course 115)', () => {
    expect(1e6 / texFromCount({ system: 'metric-nm', size: 10, plies: 11 })).toBeCloseTo(909.09, 2);
    expect(1e6 / texFromCount({ system: 'metric-nm', size: 20, plies: 2 })).toBeCloseTo(10_000, 6);
  });

  it('writes a count as each trade does', () => {
    expect(yarnCountInWords({ system: 'cotton-ne', size: 8, plies: 4 })).toBe('8/4 cotton');
    expect(yarnCountInWords({ system: 'worsted-nw', size: 10, plies: 2 })).toBe('2/10 worsted');
    expect(yarnCountInWords({ system: 'metric-nm', size: 48, plies: 2 })).toBe('Nm 2/48');
  });
});

it('goes to tex and back in every system, for any plies', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...systems),
      fc.double({ min: 0.01, max: 10_000, noNaN: true }),
      fc.integer({ min: 1, max: 20 }),
      (system, size, plies) => {
        const whole = texFromCount({ system, size, plies });
        expect(relative(countFromTex(system, whole, plies).size, size)).toBeLessThan(1e-12);
        expect(relative(sizeFromTex(system, texFromSize(system, size)), size)).toBeLessThan(1e-12);
      },
    ),
  );
});
