import type { LengthUnits } from './lengthWords.ts';
import { failure, type Outcome, success } from './outcome.ts';
import { MM_PER_INCH, type Mm, mm } from './units.ts';

const drawn: Readonly<Record<string, number>> = {
  '¼': 1 / 4,
  '½': 1 / 2,
  '¾': 3 / 4,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
};

const unitSizes: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  inch: MM_PER_INCH,
  inches: MM_PER_INCH,
  zoll: MM_PER_INCH,
  '"': MM_PER_INCH,
  '″': MM_PER_INCH,
  '”': MM_PER_INCH,
  ft: 12 * MM_PER_INCH,
  foot: 12 * MM_PER_INCH,
  feet: 12 * MM_PER_INCH,
  "'": 12 * MM_PER_INCH,
  '′': 12 * MM_PER_INCH,
  yd: 36 * MM_PER_INCH,
};

/**
 * A whole, decimal or mixed number, then perhaps a unit. A fraction with a slash needs a gap before it, so 81/4 is
 * eighty-one quarters and never 8¼.
 */
const part =
  /^(?:(?:(\d+(?:[.,]\d+)?)[ -])?(\d+)[/\u2044](\d+)|(?:(\d+)[ -]?)?([¼½¾⅛⅜⅝⅞⅓⅔])|(\d+(?:[.,]\d+)?|[.,]\d+)) *(mm|cm|m|inches|inch|in|zoll|"|″|”|ft|foot|feet|'|′|yd)?\.? */i;

const unread = (text: string, why: string) =>
  failure('length-unread', `“${text}” can't be read as a length${why}.`, 'Write it like 210, 21 cm, 8 1/4 in or 8¼.');

/**
 * Reads a length as a weaver types it: `210`, `21 cm`, `8 1/4 in`, `8¼`, `8-1/4"`, `1 ft 2 in`, `0,5 m`.
 * @param units what a bare number means.
 * @returns mm, at least 0; or `length-unread`.
 */
export function readLength(text: string, units: LengthUnits): Outcome<Mm, 'length-unread'> {
  const trimmed = text.trim();
  // 1 280 with a plain or thin space is one number, when the groups are of three figures.
  let rest = trimmed
    .replace(/(\d)[\u00a0\u2009\u202f ](?=\d{3}(?!\d|[/\u2044]))/g, '$1')
    .replace(/[\u00a0\u2009\u202f]/g, ' ');
  if (rest === '') return unread(text, ': nothing is there');
  let total = 0;
  let smallestUnit = Number.POSITIVE_INFINITY;
  while (rest !== '') {
    const found = part.exec(rest);
    if (found === null) return unread(text, '');
    const [all, wholeBefore = '0', top, bottom, wholeBeside = '0', character, plain, unitWord] = found;
    const number = (digits: string) => Number(digits.replace(',', '.'));
    let value = 0;
    if (top !== undefined && bottom !== undefined) {
      // "2.5 1/4" could mean anything.
      if (Number(bottom) === 0 || /[.,]/.test(wholeBefore)) return unread(text, '');
      value = number(wholeBefore) + Number(top) / Number(bottom);
    } else if (character !== undefined) {
      value = number(wholeBeside) + (drawn[character] ?? 0);
    } else if (plain !== undefined) {
      value = number(plain);
    }
    const size = unitWord === undefined ? (units === 'mm' ? 1 : MM_PER_INCH) : unitSizes[unitWord.toLowerCase()];
    // Parts follow from large to small, each with its unit: 1 ft 2 in, never 2 2.
    if (size === undefined || size >= smallestUnit) return unread(text, '');
    if (unitWord === undefined && smallestUnit !== Number.POSITIVE_INFINITY) return unread(text, '');
    total += value * size;
    smallestUnit = unitWord === undefined ? 0 : size;
    rest = rest.slice(all.length);
  }
  return success(mm(total));
}
