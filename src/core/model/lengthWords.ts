import { numberInWords } from './numberWords.ts';
import { MM_PER_INCH } from './units.ts';

export type LengthUnits = 'mm' | 'in';
/** What is being shown decides how finely: a planned size or height, an edge or a photograph's figure, one pass. */
export type LengthKind = 'planned' | 'edge' | 'pass-height';

const drawnFractions: Readonly<Record<string, string>> = {
  '1/4': '¼',
  '1/2': '½',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
};

/** A fraction in lowest terms: `¼` where a character for it exists, else `5⁄16` with the fraction slash. */
export function fractionInWords(numerator: number, denominator: number): string {
  let [top, bottom] = [numerator, denominator];
  while (top % 2 === 0 && bottom % 2 === 0 && top > 0) [top, bottom] = [top / 2, bottom / 2];
  return drawnFractions[`${top}/${bottom}`] ?? `${top}\u2044${bottom}`;
}

/** Inches as a true fraction, to the nearest 1/`denominator`: `8 ¼`, `⅜`, `12`. */
export function inchesInWords(inches: number, denominator: number): string {
  const parts = Math.round(Math.abs(inches) * denominator);
  const whole = Math.floor(parts / denominator);
  const rest = parts % denominator;
  if (rest === 0) return numberInWords(whole);
  const fraction = fractionInWords(rest, denominator);
  return whole === 0 ? fraction : `${numberInWords(whole)} ${fraction}`;
}

/**
 * A length as the weaver chose to read it. Millimetres: none, one or two decimals by kind. Inches: to 1/16 under
 * 12 in and to 1/8 above, as true fractions; a pass is far thinner than 1/16, so it is written to 1/1000.
 * @param length mm, not negative; what is stored is never rounded.
 */
export function lengthInWords(length: number, units: LengthUnits, kind: LengthKind = 'planned'): string {
  if (units === 'mm') {
    return `${numberInWords(length, kind === 'planned' ? 0 : kind === 'edge' ? 1 : 2)} mm`;
  }
  const inches = length / MM_PER_INCH;
  if (kind === 'pass-height') return `${numberInWords(inches, 3)} in`;
  if (kind === 'edge') return `${deviationInches(inches)} in`;
  return `${inchesInWords(inches, inches < 12 ? 16 : 8)} in`;
}

/** To 1/32, or the words for less than that. */
export function deviationInches(inches: number): string {
  const size = Math.abs(inches);
  if (size < 1 / 64) return `less than ${fractionInWords(1, 32)}`;
  return inchesInWords(size, 32);
}

/** Yarn is told in metres, or in yards by whoever reads inches: how many metres one is. */
export const yarnMeasures: Readonly<Record<LengthUnits, { readonly unit: string; readonly metres: number }>> = {
  mm: { unit: 'm', metres: 1 },
  in: { unit: 'yd', metres: 0.9144 },
};

/** A length of yarn: one decimal under ten, whole above. */
export function yarnLengthInWords(metresLong: number, units: LengthUnits): string {
  const { unit, metres } = yarnMeasures[units];
  const value = metresLong / metres;
  return `${numberInWords(value, value < 9.95 ? 1 : 0)} ${unit}`;
}

/** Weight of yarn by its length: `1 000 g/km`, `0.914 g/yd`. @param tex g/km. */
export function yarnWeightInWords(tex: number, units: LengthUnits): string {
  return units === 'mm'
    ? `${numberInWords(tex)} g/km`
    : `${numberInWords((tex * yarnMeasures.in.metres) / 1000, 3)} g/yd`;
}

/** Grams, one decimal under ten. */
export function gramsInWords(weight: number): string {
  return `${numberInWords(weight, weight < 9.95 ? 1 : 0)} g`;
}
