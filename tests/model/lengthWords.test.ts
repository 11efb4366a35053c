import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deviationAsFinding, deviationInRow, giveOrTake } from '../../src/core/model/deviationWords.ts';
import { gramsInWords, lengthInWords, yarnLengthInWords } from '../../src/core/model/lengthWords.ts';
import { measurement } from '../../src/core/model/measurement.ts';
import { countInWords, numberInWords } from '../../src/core/model/numberWords.ts';
import { readLength } from '../../src/core/model/readLength.ts';
import { mm } from '../../src/core/model/units.ts';

const read = (text: string, units: 'mm' | 'in' = 'mm') => {
  const outcome = readLength(text, units);
  return outcome.ok ? outcome.value : outcome.problem.tag;
};

describe('lengths in words', () => {
  it('shows millimetres as finely as what is shown allows', () => {
    expect(lengthInWords(209.6, 'mm')).toBe('210 mm');
    expect(lengthInWords(3.14, 'mm', 'edge')).toBe('3.1 mm');
    expect(lengthInWords(1.0649, 'mm', 'pass-height')).toBe('1.06 mm');
    expect(lengthInWords(1280, 'mm')).toBe('1\u202f280 mm');
  });

  it('shows inches as true fractions: 1/16 under 12 in, 1/8 above', () => {
    expect(lengthInWords(8.25 * 25.4, 'in')).toBe('8 ¼ in');
    expect(lengthInWords(8.3125 * 25.4, 'in')).toBe('8 5\u204416 in');
    expect(lengthInWords(0.375 * 25.4, 'in')).toBe('⅜ in');
    expect(lengthInWords(11.99 * 25.4, 'in')).toBe('12 in');
    expect(lengthInWords(15.8125 * 25.4, 'in')).toBe('15 ⅞ in');
    expect(lengthInWords(2 * 25.4, 'in')).toBe('2 in');
  });

  it('shows edges in inches to 1/32, or says it is less', () => {
    expect(lengthInWords(3.1, 'in', 'edge')).toBe('⅛ in');
    expect(lengthInWords(2.4, 'in', 'edge')).toBe('3\u204432 in');
    expect(lengthInWords(0.2, 'in', 'edge')).toBe('less than 1\u204432 in');
  });

  it('counts in numerals with the right word', () => {
    expect(countInWords(1, 'end')).toBe('1 end');
    expect(countInWords(2, 'end')).toBe('2 ends');
    expect(countInWords(0, 'turn')).toBe('0 turns');
    expect(countInWords(0.5, 'turn')).toBe('½ turn');
    expect(countInWords(2.5, 'turn')).toBe('2½ turns');
    expect(countInWords(2, 'butterfly', 'butterflies')).toBe('2 butterflies');
    expect(numberInWords(-0.04, 1)).toBe('0.0');
  });

  it('shows yarn and weight', () => {
    expect(yarnLengthInWords(28.6, 'mm')).toBe('29 m');
    expect(yarnLengthInWords(5.04, 'mm')).toBe('5.0 m');
    expect(yarnLengthInWords(91.44, 'in')).toBe('100 yd');
    expect(gramsInWords(9.96)).toBe('10 g');
  });
});

describe('deviations', () => {
  it('rounds one sigma up to one figure and the value to the same place', () => {
    expect(giveOrTake(0.34).text).toBe('0.4');
    expect(giveOrTake(0.3).text).toBe('0.3');
    expect(giveOrTake(0.081).text).toBe('0.09');
    expect(giveOrTake(0.95).text).toBe('1');
    expect(giveOrTake(0.097).text).toBe('0.1');
    expect(giveOrTake(12).text).toBe('20');
    expect(deviationInRow(measurement(-0.52, 0.36, 9, 'selvedge'), 'across', 'mm')).toBe('0.5 mm in ± 0.4');
    expect(deviationInRow(measurement(41.7, 12, 9, 'fell'), 'along', 'mm')).toBe('40 mm up ± 20');
  });

  it('says in, out, up and down, and narrow or wide where inches would clash', () => {
    const edge = measurement(-3.1, 0.36, 9, 'selvedge');
    expect(deviationAsFinding(edge, 'across', 'mm')).toMatchObject({
      figure: '3.1 mm in',
      giveOrTake: 'give or take 0.4',
    });
    expect(deviationAsFinding(edge, 'across', 'in')).toMatchObject({
      figure: '⅛ inch narrow',
      giveOrTake: 'give or take 1\u204464',
    });
    expect(deviationAsFinding(measurement(0.1, 0.5, 3, 'fell'), 'along', 'in').figure).toBe(
      'less than 1\u204432 inch up',
    );
  });

  it('never claims less than sigma and never shows a minus', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 500, noNaN: true }),
        fc.double({ min: -500, max: 500, noNaN: true }),
        (sigma, value) => {
          const shown = deviationInRow(measurement(value, sigma, 1, 'x'), 'across', 'mm');
          expect(shown).not.toMatch(/[-\u2212]/);
          expect(Number(giveOrTake(sigma).text.replace('\u202f', ''))).toBeGreaterThanOrEqual(sigma * (1 - 1e-8));
        },
      ),
    );
  });
});

describe('lengths as typed', () => {
  it.each([
    ['210', 210],
    ['210 mm', 210],
    ['21 cm', 210],
    ['21,5cm', 215],
    ['0.5 m', 500],
    ['8 1/4 in', 209.55],
    ['8-1/4"', 209.55],
    ['8¼ in', 209.55],
    ['8 ¼ in', 209.55],
    ['8 5\u204416 in', 211.1375],
    ['81/4 in', 514.35],
    ['1/4 in', 6.35],
    ['¼"', 6.35],
    ['1 ft 2 in', 355.6],
    ['1\u202f280 mm', 1280],
    ['1 280', 1280],
    ['.5 in', 12.7],
  ])('reads %s', (text, expected) => {
    expect(read(text)).toBeCloseTo(expected, 9);
  });

  it('takes a bare number as the units the weaver chose', () => {
    expect(read('8¼', 'in')).toBeCloseTo(209.55, 9);
    expect(read('8 1/4', 'in')).toBeCloseTo(209.55, 9);
    expect(read('8.25', 'in')).toBeCloseTo(209.55, 9);
    expect(read('21 cm', 'in')).toBeCloseTo(210, 9);
  });

  it.each([
    '',
    ' ',
    'wide',
    '-3',
    '3 4',
    '2.5 1/4 in',
    '1/0 in',
    '2 in 3 in',
    '2 in 1 ft',
    'NaN',
    '1e5',
    '5 mm 2',
    '3 parsecs',
  ])('leaves “%s” unread', (text) => {
    expect(read(text)).toBe('length-unread');
  });

  it('reads back what it shows, to the fineness shown', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 4_000, noNaN: true }), (length) => {
        expect(Math.abs((read(lengthInWords(mm(length), 'mm')) as number) - length)).toBeLessThanOrEqual(0.5 + 1e-9);
        const finest = length / 25.4 < 12 ? 25.4 / 32 : 25.4 / 16;
        expect(Math.abs((read(lengthInWords(mm(length), 'in')) as number) - length)).toBeLessThanOrEqual(finest + 1e-9);
      }),
    );
  });
});
