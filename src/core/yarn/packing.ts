import type { Yarn } from '../model/piece.ts';
import { MM_PER_INCH, type Mm, mm, type Tex, tex } from '../model/units.ts';
import { TEX_YARDS_PER_POUND } from './countSystems.ts';

/**
 * Peirce (J. Textile Inst. 28, 1937, T45): d = 1 / (28 √Ne) inch for cotton at 1.1 cm³/g.
 * @returns the diameter in mm of a yarn of this linear density; 0.03733 √tex.
 */
export function peirceDiameter(density: Tex): Mm {
  const cottonCount = TEX_YARDS_PER_POUND / 840 / density;
  return mm(MM_PER_INCH / (28 * Math.sqrt(cottonCount)));
}

/**
 * Ashenhurst's rule: diameters to the inch = k √(yards per pound). k is 0.90 for firm worsted and cotton, 0.84 for
 * soft woollen (faena.medievaltextiles.org/ash.html; peggyosterkamp.com). A second list has 0.85 for woollen.
 */
export const ashenhurst = { firm: 0.9, softWoollen: 0.84 } as const;

export function ashenhurstDiameter(density: Tex, k: number): Mm {
  return mm(MM_PER_INCH / (k * Math.sqrt(TEX_YARDS_PER_POUND / density)));
}

/**
 * Ends to the inch at which a balanced cloth is full: diameters per inch × E / (E + I), where E is the ends of one
 * repeat of the weave and I how often the weft crosses in it (plain weave: 2 and 2).
 * @param diameter mm.
 */
export function ashenhurstSett(diameter: Mm, ends: number, intersections: number): number {
  return ((MM_PER_INCH / diameter) * ends) / (ends + intersections);
}

/** Which packing a fibre is taken to have: Peirce's for cotton, Ashenhurst's for the rest. */
export function packedDiameter(density: Tex, fibre: Yarn['fibre']): { readonly diameter: Mm; readonly rule: string } {
  switch (fibre) {
    case 'cotton':
      return { diameter: peirceDiameter(density), rule: 'Peirce, cotton' };
    case 'wool':
      return { diameter: ashenhurstDiameter(density, ashenhurst.softWoollen), rule: 'Ashenhurst, soft woollen' };
    case 'linen':
    case 'silk':
    case 'other':
      return { diameter: ashenhurstDiameter(density, ashenhurst.firm), rule: 'Ashenhurst, firm yarn' };
  }
}

/** The other way about: what a yarn this thick is likely to weigh. Area goes with the square of the diameter. */
export function texFromPackedDiameter(diameter: Mm, fibre: Yarn['fibre']): Tex {
  const unit = packedDiameter(tex(1), fibre).diameter;
  return tex((diameter / unit) ** 2);
}
