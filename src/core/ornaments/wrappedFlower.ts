import type { Ornament, Piece } from '../model/piece.ts';
import { type ClothPoint, clothMm, type Metres, type Mm, metres, mm } from '../model/units.ts';
import { weftDiameter } from '../yarn/yarnDiameter.ts';

export type WrappedFlower = Extract<Ornament, { kind: 'wrapped-flower' }>;

/** Peg thickness, tails for fastening and how much of the radius the sewn middle takes. Common practice, no source. */
const peg = mm(4);
const fasteningTail = mm(150);
const middleShare = 0.25;

export interface FlowerFigures {
  readonly petals: number;
  /** From the sewn middle to the tip. */
  readonly petalLength: Mm;
  /** At the widest: as wide as its strands lie side by side, or as the neighbouring petal allows. */
  readonly petalWidth: Mm;
  readonly diameter: Mm;
  /** Wraps round pegs for one flower. */
  readonly wraps: number;
  /** Yarn for one flower, with both tails. */
  readonly yarnEach: Metres;
  readonly yarn: Metres;
}

/**
 * A flower wound on a ring of pegs: each petal is so many loops from the middle round its peg and back, in so many
 * layers; then the middle is sewn round with a stitch over every petal, twice.
 */
export function wrappedFlower(piece: Piece, flower: WrappedFlower): FlowerFigures {
  const radius = flower.formerDiameter / 2;
  const wraps = flower.pegs * flower.wrapsPerPetal * flower.layers;
  const loop = 2 * radius + (Math.PI * peg) / 2;
  const sewing = 2 * flower.pegs * 2 * radius * middleShare;
  const each = wraps * loop + sewing + 2 * fasteningTail;
  const yarn = piece.yarns.find((candidate) => candidate.id === flower.yarn);
  const thickness = (yarn === undefined ? null : weftDiameter(yarn))?.diameter ?? 2 * piece.cloth.passHeight;
  const room = 2 * radius * Math.sin(Math.PI / flower.pegs);
  const strands = yarn?.strands ?? 1;
  return {
    petals: flower.pegs,
    petalLength: mm(radius * (1 - middleShare)),
    petalWidth: mm(Math.min(room, Math.max(peg, 2 * flower.wrapsPerPetal * thickness))),
    diameter: flower.formerDiameter,
    wraps,
    yarnEach: metres((each * strands) / 1000),
    yarn: metres((each * strands * flower.count) / 1000),
  };
}

/** The petals as loops from the middle, cloth mm: one closed outline of `pegs` rounded lobes. */
export function flowerOutline(flower: WrappedFlower, figures: FlowerFigures): readonly ClothPoint[] {
  const radius = flower.formerDiameter / 2;
  const valley = Math.max(radius * middleShare, radius * 0.55);
  const around = flower.pegs * 8;
  return Array.from({ length: around }, (_, index) => {
    const angle = (2 * Math.PI * index) / around;
    const lobe = (1 + Math.cos(angle * figures.petals)) / 2;
    const reach = valley + (radius - valley) * Math.sqrt(lobe);
    return { x: clothMm(flower.at.x + reach * Math.sin(angle)), y: clothMm(flower.at.y + reach * Math.cos(angle)) };
  });
}
