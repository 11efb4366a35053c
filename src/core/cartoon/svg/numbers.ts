const numberPattern = /[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?/gi;

/** Every number in a list such as `points` or a transform's arguments; at most `most` of them. */
export function numbersIn(text: string, most: number): number[] {
  const found: number[] = [];
  for (const match of text.matchAll(numberPattern)) {
    found.push(Number(match[0]));
    if (found.length >= most) break;
  }
  return found;
}

/** CSS units in user units: 96 to the inch (CSS Values and Units, level 4). */
const perUnit: Record<string, number> = {
  '': 1,
  px: 1,
  mm: 96 / 25.4,
  cm: 96 / 2.54,
  q: 96 / 101.6,
  in: 96,
  pt: 96 / 72,
  pc: 16,
  em: 16,
  rem: 16,
  ex: 8,
};

/**
 * A length in user units.
 * @param whole what 100 % is.
 * @returns `fallback` when there is none, or it can't be read.
 */
export function lengthOf(text: string | undefined, whole: number, fallback: number): number {
  // A length is short; a long text is no length, and could make the pattern slow.
  if (text === undefined || text.length > 60) return fallback;
  const match = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*(%|[a-z]*)\s*$/i.exec(text);
  if (match === null) return fallback;
  const value = Number(match[1]);
  const unit = match[2]!.toLowerCase();
  const length = unit === '%' ? (value / 100) * whole : value * (perUnit[unit] ?? Number.NaN);
  return Number.isFinite(length) ? length : fallback;
}
