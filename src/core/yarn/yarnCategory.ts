import { type Mm, mm, type Tex, tex } from '../model/units.ts';
import { texFromSize } from './countSystems.ts';

/**
 * Yarn-weight categories 0 to 7. Wraps per inch: Craft Yarn Council, as reproduced at ihookdesign.com/what-is-wpi.
 * Yards per pound: knititnow.com, citing YarnStandards.com; none is given for category 7. Neighbours overlap and
 * shops disagree, so a category is a guess, never a measurement.
 */
interface Category {
  readonly name: string;
  readonly wrapsPerInch: readonly [number, number];
  readonly yardsPerPound: readonly [number, number] | null;
}

const categories: readonly Category[] = [
  { name: 'lace', wrapsPerInch: [30, 40], yardsPerPound: [4000, 10000] },
  { name: 'superfine', wrapsPerInch: [14, 30], yardsPerPound: [3000, 4000] },
  { name: 'fine', wrapsPerInch: [12, 18], yardsPerPound: [2000, 3000] },
  { name: 'light', wrapsPerInch: [11, 15], yardsPerPound: [1000, 2000] },
  { name: 'medium', wrapsPerInch: [9, 12], yardsPerPound: [800, 1000] },
  { name: 'bulky', wrapsPerInch: [6, 9], yardsPerPound: [500, 800] },
  { name: 'super bulky', wrapsPerInch: [5, 6], yardsPerPound: [100, 500] },
  { name: 'jumbo', wrapsPerInch: [1, 4], yardsPerPound: null },
];

export interface CategoryGuess<Value> {
  readonly low: Value;
  /** The geometric middle of the range. */
  readonly middle: Value;
  readonly high: Value;
}

function rangeOf<Value>(low: number, high: number, brand: (value: number) => Value): CategoryGuess<Value> {
  return { low: brand(low), middle: brand(Math.sqrt(low * high)), high: brand(high) };
}

/** The name of a category 0–7, or null for a figure that is none. */
export function categoryName(category: number): string | null {
  return categories[category]?.name ?? null;
}

/** What linear density a category may have; null for 7, which has no published yardage. */
export function texFromCategory(category: number): CategoryGuess<Tex> | null {
  const yards = categories[category]?.yardsPerPound;
  if (yards === undefined || yards === null) return null;
  return rangeOf(texFromSize('yards-per-pound', yards[1]), texFromSize('yards-per-pound', yards[0]), tex);
}

/** What diameter a category may have, from its wraps per inch. */
export function diameterFromCategory(category: number): CategoryGuess<Mm> | null {
  const wraps = categories[category]?.wrapsPerInch;
  return wraps === undefined ? null : rangeOf(25.4 / wraps[1], 25.4 / wraps[0], mm);
}

/** Every category whose range holds this many wraps per inch: often two or three. */
export function categoriesFromWraps(wrapsPerInch: number): readonly number[] {
  return categories.flatMap(({ wrapsPerInch: [low, high] }, category) =>
    wrapsPerInch >= low && (wrapsPerInch <= high || category === 0) ? [category] : [],
  );
}
