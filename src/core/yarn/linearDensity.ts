import { numberInWords } from '../model/numberWords.ts';
import type { Yarn } from '../model/piece.ts';
import { type Mm, mm, type Tex, tex } from '../model/units.ts';
import { texFromCount, yarnCountInWords } from './countSystems.ts';
import { texFromPackedDiameter } from './packing.ts';
import { categoryName, texFromCategory } from './yarnCategory.ts';

/** Which of the things known about a yarn a figure came from. Later ones are guesses. */
export type YarnSource = 'label' | 'count' | 'diameter' | 'wraps' | 'category';

export interface LinearDensity {
  /** One strand of the yarn as sold, g/km. */
  readonly tex: Tex;
  readonly from: YarnSource;
  /** True when it was worked back from thickness or a category: good for an idea, not for an order. */
  readonly guess: boolean;
  /** The way taken, in one line. */
  readonly working: string;
}

/**
 * What a yarn weighs along its length. A label overrides the count; thickness and category only give a guess.
 * @returns null when nothing about the yarn says.
 */
export function linearDensity(yarn: Yarn): LinearDensity | null {
  if (yarn.label !== null) {
    const { metres, grams } = yarn.label;
    const density = tex((grams / metres) * 1000);
    return told(density, 'label', `${numberInWords(grams)} g ÷ ${numberInWords(metres)} m`);
  }
  if (yarn.count !== null) {
    const working = `by its count, ${yarnCountInWords(yarn.count)}${yarn.count.plies > 1 ? '; plied yarn is often 5 % shorter' : ''}`;
    return told(texFromCount(yarn.count), 'count', working);
  }
  const thickness = yarn.diameter ?? wrapsDiameter(yarn);
  if (thickness !== null) {
    const from = yarn.diameter === null ? 'wraps' : 'diameter';
    const working = `guessed from ${numberInWords(thickness, 2)} mm of thickness`;
    return { tex: texFromPackedDiameter(thickness, yarn.fibre), from, guess: true, working };
  }
  const category = yarn.category === null ? null : texFromCategory(yarn.category);
  if (yarn.category !== null && category !== null) {
    const working = `guessed from category ${yarn.category}, ${categoryName(yarn.category)}: ${numberInWords(category.low)} to ${numberInWords(category.high)} g/km`;
    return { tex: category.middle, from: 'category', guess: true, working };
  }
  return null;
}

const told = (density: Tex, from: YarnSource, working: string): LinearDensity => ({
  tex: density,
  from,
  guess: false,
  working: `${working} = ${numberInWords(density)} g/km`,
});

/** Laid side by side, wraps touch: one wrap is one diameter. */
export function wrapsDiameter(yarn: Yarn): Mm | null {
  return yarn.wrapsPerCm === null ? null : mm(10 / yarn.wrapsPerCm);
}
