import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../src/core/colour/ciede2000.ts';
import { contrastRatio, letterColour } from '../../src/core/colour/contrast.ts';
import { labFromSrgb, srgbFromLab } from '../../src/core/colour/lab.ts';
import { labOfYarns, nearestYarn } from '../../src/core/colour/nearestYarn.ts';
import { encodedFromLinear, hexFromSrgb, linearFromEncoded, srgbFromHex } from '../../src/core/colour/srgb.ts';

const pairs: number[][] = JSON.parse(
  readFileSync(new URL('../fixtures/ciede2000_sharma34.json', import.meta.url), 'utf8'),
);
const hex = (text: string) => srgbFromHex(text)!;

describe('colour', () => {
  // Sharma, Wu, Dalal, Color Res. Appl. 30(1) (2005) 21–30, Table 1.
  it('has all 34 published pairs', () => expect(pairs).toHaveLength(34));
  it.each(pairs.map((pair, at) => [at + 1, pair] as const))('agrees with published pair %i, both ways', (_at, pair) => {
    const [l1, a1, b1, l2, a2, b2, difference] = pair as [number, number, number, number, number, number, number];
    const one = { lightness: l1, a: a1, b: b1 };
    const other = { lightness: l2, a: a2, b: b2 };
    expect(Math.abs(ciede2000(one, other) - difference)).toBeLessThanOrEqual(1e-4);
    expect(Math.abs(ciede2000(other, one) - difference)).toBeLessThanOrEqual(1e-4);
  });

  it("has sRGB's curve (IEC 61966-2-1: threshold 0.04045, slope 12.92, exponent 2.4)", () => {
    // linear(0.5) = 0.214041, derived from the constants, which are from memory.
    expect(linearFromEncoded(0.5)).toBeCloseTo(0.214041, 6);
    expect(linearFromEncoded(0.04045)).toBeCloseTo(0.04045 / 12.92, 12);
    for (let value = 0; value <= 1; value += 1 / 255)
      expect(encodedFromLinear(linearFromEncoded(value))).toBeCloseTo(value, 6);
  });

  it('puts red at L*a*b* 53.24, 80.09, 67.20 under D65 (published value for sRGB red)', () => {
    const red = labFromSrgb(hex('#ff0000'));
    expect(Math.abs(red.lightness - 53.24)).toBeLessThan(0.15);
    expect(Math.abs(red.a - 80.09)).toBeLessThan(0.15);
    expect(Math.abs(red.b - 67.2)).toBeLessThan(0.15);
    const white = labFromSrgb(hex('#ffffff'));
    expect(white.lightness).toBeCloseTo(100, 3);
    expect(Math.hypot(white.a, white.b)).toBeLessThan(0.02);
  });

  it('goes to L*a*b* and back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffffff }), (value) => {
        const text = `#${value.toString(16).padStart(6, '0')}`;
        expect(hexFromSrgb(srgbFromLab(labFromSrgb(hex(text))))).toBe(text);
      }),
    );
  });

  it('is a distance in the ways a match needs: never negative, nothing from itself, the same both ways', () => {
    const lab = fc.record({
      lightness: fc.double({ min: 0, max: 100, noNaN: true }),
      a: fc.double({ min: -100, max: 100, noNaN: true }),
      b: fc.double({ min: -100, max: 100, noNaN: true }),
    });
    fc.assert(
      fc.property(lab, lab, (one, other) => {
        const there = ciede2000(one, other);
        expect(there).toBeGreaterThanOrEqual(0);
        expect(ciede2000(one, one)).toBe(0);
        expect(Math.abs(there - ciede2000(other, one))).toBeLessThan(1e-9);
      }),
    );
  });

  it('finds the yarn that looks nearest', () => {
    const yarns = labOfYarns([{ colour: '#2b3150' }, { colour: '#efe6d8' }, { colour: '#c9952e' }]);
    expect(nearestYarn(hex('#000080'), yarns).yarn).toBe(0);
    expect(nearestYarn(hex('#ffd700'), yarns).yarn).toBe(2);
    expect(nearestYarn(hex('#efe6d8'), yarns)).toEqual({ yarn: 1, difference: 0 });
  });

  it('reads contrast as WCAG 2.2 does', () => {
    expect(contrastRatio(hex('#ffffff'), hex('#000000'))).toBeCloseTo(21, 10);
    // Value from memory: #777777 on white is 4.48.
    expect(contrastRatio(hex('#777777'), hex('#ffffff'))).toBeCloseTo(4.48, 2);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffffff }), (value) => {
        const ground = `#${value.toString(16).padStart(6, '0')}`;
        expect(contrastRatio(hex(ground), hex(letterColour(ground)))).toBeGreaterThan(4.1);
      }),
    );
  });

  it('refuses what is not a colour', () => {
    for (const text of ['', 'red', '#fff', '#12345g', '#1234567']) expect(srgbFromHex(text)).toBeNull();
  });
});
