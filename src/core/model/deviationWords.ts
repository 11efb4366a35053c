import { deviationInches, fractionInWords, inchesInWords, type LengthUnits, lengthInWords } from './lengthWords.ts';
import type { Measurement } from './measurement.ts';
import { numberInWords } from './numberWords.ts';
import { MM_PER_INCH } from './units.ts';

/**
 * An edge lies in or out, a height up or down, a breadth is narrower or wider than planned. Positive is out, up, wider.
 */
export type DeviationAxis = 'across' | 'along' | 'breadth';

export interface GiveOrTake {
  /** One sigma rounded up to one figure. */
  readonly text: string;
  /** Decimals the value is then shown with; 0 or less for tens and up. */
  readonly decimals: number;
}

/**
 * One sigma rounded up to one figure: 0.34 becomes 0.4, 0.081 becomes 0.09, 12 becomes 20. Rounding up never claims
 * more than was measured.
 */
export function giveOrTake(sigma: number): GiveOrTake {
  const exponent = Math.floor(Math.log10(sigma) + 1e-12);
  const unit = 10 ** exponent;
  // A sigma of exactly 0.3 must stay 0.3, whatever its last binary digit says.
  const figure = Math.ceil(sigma / unit - 1e-9);
  const carried = figure === 10 ? exponent + 1 : exponent;
  const value = figure * unit;
  const decimals = Math.max(0, -carried);
  return { text: numberInWords(value, decimals), decimals: -carried };
}

function toPlace(value: number, decimals: number): string {
  const step = 10 ** -decimals;
  return numberInWords(Math.round(Math.abs(value) / step) * step, Math.max(0, decimals));
}

function sideWord(value: number, axis: DeviationAxis): string {
  if (axis === 'across') return value < 0 ? 'in' : 'out';
  if (axis === 'breadth') return value < 0 ? 'narrower' : 'wider';
  return value < 0 ? 'down' : 'up';
}

/** Sigma in inches, rounded up to the next of 1/64, 1/32, 1/16, 1/8 … */
function giveOrTakeInches(sigmaInches: number): string {
  let denominator = 64;
  while (denominator > 1 && sigmaInches > 1 / denominator + 1e-9) denominator /= 2;
  return denominator === 1 ? inchesInWords(Math.ceil(sigmaInches), 1) : fractionInWords(1, denominator);
}

/** A row's figure: `0.5 mm in ± 0.4`; in inches `⅛ in narrow ± 1⁄64`. Never a minus sign. */
export function deviationInRow(deviation: Measurement, axis: DeviationAxis, units: LengthUnits): string {
  const finding = deviationAsFinding(deviation, axis, units);
  return `${finding.figure} ± ${finding.spread}`;
}

/** A figure in words, with its give or take in full and as it stands after ±. */
export interface Finding {
  readonly figure: string;
  readonly giveOrTake: string;
  readonly spread: string;
}

/**
 * A finding's two lines: `3.1 mm in` and `give or take 0.4`. In inches "in" would be read as the unit, so the edge
 * is said to be narrow or wide.
 * @param deviation mm.
 */
export function deviationAsFinding(deviation: Measurement, axis: DeviationAxis, units: LengthUnits): Finding {
  const size = sizeAsFinding(deviation, units);
  const word = sideWord(deviation.value, axis);
  // What rounds to nothing lies on no side.
  if (units === 'mm')
    return Number.parseFloat(size.figure) === 0 ? size : { ...size, figure: `${size.figure} ${word}` };
  const plain = word === 'in' ? 'narrow' : word === 'out' ? 'wide' : word;
  return { ...size, figure: `${size.figure} ${plain}` };
}

/** The same of a length that lies on no side: `3.1 mm`. */
export function sizeAsFinding(size: Measurement, units: LengthUnits): Finding {
  if (units === 'mm') {
    const spread = giveOrTake(size.sigma);
    const figure = `${toPlace(size.value, spread.decimals)} mm`;
    return { figure, giveOrTake: `give or take ${spread.text}`, spread: spread.text };
  }
  const spread = giveOrTakeInches(size.sigma / MM_PER_INCH);
  return { figure: `${deviationInches(size.value / MM_PER_INCH)} inch`, giveOrTake: `give or take ${spread}`, spread };
}

/** A size in a row: `131.2 mm ± 0.5`, `5 ⅛ in ± 1⁄64`. */
export function sizeInRow(size: Measurement, units: LengthUnits): string {
  const { figure, spread } = sizeAsFinding(size, units);
  return `${figure.replace(/ inch$/, ' in')} ± ${spread}`;
}

/** The height of a pass in a row: `1.06 mm ± 0.01`, `0.042 in ± 0.001`. */
export function passInRow({ value, sigma }: Measurement, units: LengthUnits): string {
  const [unit, decimals, least] = units === 'mm' ? [1, 2, 0.01] : [MM_PER_INCH, 3, 0.001];
  return `${lengthInWords(value, units, 'pass-height')} ± ${numberInWords(Math.max(sigma / unit, least), decimals)}`;
}
