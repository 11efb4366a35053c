import { numberInWords } from '../model/numberWords.ts';
import type { Yarn } from '../model/piece.ts';
import { type Mm, mm } from '../model/units.ts';
import { linearDensity, wrapsDiameter, type YarnSource } from './linearDensity.ts';
import { packedDiameter } from './packing.ts';
import { categoryName, diameterFromCategory } from './yarnCategory.ts';

export interface YarnDiameter {
  /** mm; one strand, or the whole bundle from `weftDiameter`. */
  readonly diameter: Mm;
  readonly from: YarnSource;
  readonly guess: boolean;
  readonly working: string;
}

/**
 * How thick one strand is: a measured diameter first, then wraps, then what its linear density packs to, then its
 * category. @returns null when nothing says.
 */
export function yarnDiameter(yarn: Yarn): YarnDiameter | null {
  if (yarn.diameter !== null) {
    const working = `${numberInWords(yarn.diameter, 2)} mm as measured`;
    return { diameter: yarn.diameter, from: 'diameter', guess: false, working };
  }
  const wraps = wrapsDiameter(yarn);
  if (wraps !== null && yarn.wrapsPerCm !== null) {
    const working = `10 mm ÷ ${numberInWords(yarn.wrapsPerCm, 1)} wraps = ${numberInWords(wraps, 2)} mm`;
    return { diameter: wraps, from: 'wraps', guess: false, working };
  }
  const density = linearDensity(yarn);
  if (density !== null && density.from !== 'category') {
    const { diameter, rule } = packedDiameter(density.tex, yarn.fibre);
    const working = `${numberInWords(density.tex)} g/km packs to ${numberInWords(diameter, 2)} mm (${rule})`;
    return { diameter, from: density.from, guess: false, working };
  }
  const category = yarn.category === null ? null : diameterFromCategory(yarn.category);
  if (yarn.category !== null && category !== null) {
    const working = `guessed from category ${yarn.category}, ${categoryName(yarn.category)}: ${numberInWords(category.low, 1)} to ${numberInWords(category.high, 1)} mm`;
    return { diameter: category.middle, from: 'category', guess: true, working };
  }
  return null;
}

/** Several strands woven as one take the room of one round bundle: their areas add. */
export function bundleDiameter(strand: Mm, strands: number): Mm {
  return mm(strand * Math.sqrt(strands));
}

/** The thickness of the weft as it is woven: every strand of the butterfly together. */
export function weftDiameter(yarn: Yarn): YarnDiameter | null {
  const strand = yarnDiameter(yarn);
  if (strand === null || yarn.strands === 1) return strand;
  const diameter = bundleDiameter(strand.diameter, yarn.strands);
  const working = `${strand.working}; ${yarn.strands} strands together, × √${yarn.strands} = ${numberInWords(diameter, 2)} mm`;
  return { ...strand, diameter, working };
}
