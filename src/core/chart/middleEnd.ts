import type { Outline } from '../cartoon/outline.ts';
import { fillOutline } from './fillOutline.ts';

/** An area of the drawing, by its place in the list of areas. */
export interface DrawnArea {
  readonly area: number;
  readonly outlines: readonly Outline[];
}

const isUpright = ({ rings }: Outline, within: number): boolean =>
  rings.some((ring) => {
    let fromX = ring[ring.length - 2]!;
    for (let at = 0; at < ring.length; at += 2) {
      if (Math.abs(fromX) <= within && Math.abs(ring[at]!) <= within) return true;
      fromX = ring[at]!;
    }
    return false;
  });

/**
 * What lies on the middle end of an odd warp, pass by pass, where an upright edge is drawn through its very middle. Of
 * other ends what is drawn towards the middle of the cloth decides; here neither side is nearer. The end belongs to what
 * is drawn on both sides of the edge: so a bar one pitch wide is one end wide, and a drawing and its mirror image agree.
 * Where nothing is on both sides, as where two shapes meet there, it belongs to the upper of what is on either.
 * @param areas undermost first, 0 for the ground lying under all of them.
 * @param hair mm to either side to look at.
 * @returns null where no upright edge is drawn through it.
 */
export function middleEnd(
  areas: readonly DrawnArea[],
  rows: Float64Array,
  hair: number,
  firstRow: number,
  endRow: number,
): Uint16Array | null {
  if (!areas.some(({ outlines }) => outlines.some((outline) => isUpright(outline, hair)))) return null;
  const beside = Float64Array.of(-hair, hair);
  const seen = new Uint16Array(2 * rows.length);
  const onBoth = new Uint16Array(rows.length);
  for (const { area, outlines } of areas) {
    const own = new Uint16Array(2 * rows.length);
    for (const outline of outlines) fillOutline(outline, beside, rows, own, 1, firstRow, endRow);
    for (let row = firstRow; row < endRow; row++) {
      const [left, right] = [own[2 * row] === 1, own[2 * row + 1] === 1];
      if (left) seen[2 * row] = area;
      if (right) seen[2 * row + 1] = area;
      if (left && right) onBoth[row] = area;
    }
  }
  return onBoth.map((both, row) => {
    const [left, right] = [seen[2 * row]!, seen[2 * row + 1]!];
    if (both === left || both === right) return both;
    return Math.min(left, right);
  });
}
