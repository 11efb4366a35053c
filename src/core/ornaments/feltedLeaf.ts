import type { Ornament } from '../model/piece.ts';
import { type ClothPoint, clothMm, type Grams, grams } from '../model/units.ts';

export type FeltedLeaf = Extract<Ornament, { kind: 'felted-leaf' }>;

/** Needle-felted wool, g/cm³, and what is lost in trimming. Common practice, no source. */
const feltDensity = 0.2;
const trimmed = 0.1;

export interface LeafFigures {
  /** mm², one side of one leaf. */
  readonly area: number;
  readonly gramsEach: Grams;
  /** Fibre to lay out for all of them. */
  readonly grams: Grams;
}

/** Half the angle each side's arc spans, and its radius: a leaf is two equal arcs that meet at the tips. */
function arcOf(leaf: FeltedLeaf): { readonly half: number; readonly radius: number } {
  const [along, across] = [leaf.length / 2, leaf.width / 2];
  const radius = (along ** 2 + across ** 2) / (2 * across);
  return { half: Math.atan2(along, radius - across), radius };
}

/** Area by the two circular segments, and the fibre it takes at its thickness. */
export function feltedLeaf(leaf: FeltedLeaf): LeafFigures {
  const { half, radius } = arcOf(leaf);
  const area = radius ** 2 * (2 * half - Math.sin(2 * half));
  const each = ((area * leaf.thickness) / 1000) * feltDensity;
  return { area, gramsEach: grams(each), grams: grams((each * leaf.count) / (1 - trimmed)) };
}

/** The leaf's edge about its middle, cloth mm, anticlockwise; `rotation` 0 points it upward. */
export function leafOutline(leaf: FeltedLeaf, pointsPerSide = 24): readonly ClothPoint[] {
  const { half, radius } = arcOf(leaf);
  const offset = radius - leaf.width / 2;
  const [cosine, sine] = [Math.cos(leaf.rotation), Math.sin(leaf.rotation)];
  const points: ClothPoint[] = [];
  for (const side of [1, -1]) {
    for (let index = 0; index < pointsPerSide; index += 1) {
      const angle = -half + (2 * half * index) / pointsPerSide;
      const x = side * (radius * Math.cos(angle) - offset);
      const y = side * radius * Math.sin(angle);
      points.push({
        x: clothMm(leaf.at.x + x * cosine - y * sine),
        y: clothMm(leaf.at.y + x * sine + y * cosine),
      });
    }
  }
  return points;
}
