import { type Affine, identity, mapRing, mirrorUpright, rotationAbout, translation } from '../geometry/affine.ts';
import { type Box, boxMiddle, boxOfRings } from '../geometry/box.ts';
import type { Shape } from '../model/piece.ts';
import { formRings } from './formRings.ts';

/** The edge of one copy of a shape. */
export interface Outline {
  /** Closed rings x, y, x, y … in cloth mm; the first point is not repeated. */
  readonly rings: readonly Float64Array[];
  readonly fillRule: 'nonzero' | 'evenodd';
  readonly box: Box;
}

/** Where the copies of a shape lie: the shape itself, its repeats, then the mirror image of all of them. */
function copies(shape: Shape, mirrors: boolean, sideways: boolean): Affine[] {
  const maps: Affine[] = [identity];
  if (shape.repeat !== null) {
    for (let copy = 1; copy <= shape.repeat.copies; copy++) {
      maps.push(translation(sideways ? copy * shape.repeat.dx : 0, copy * shape.repeat.dy));
    }
  }
  const about = shape.mirrorAbout;
  if (about === null || !mirrors) return maps;
  const image = mirrorUpright(about);
  return [...maps, ...maps.map(([a, b, c, d, e, f]): Affine => [-a, b, -c, d, image[4] - e, f])];
}

/**
 * Every copy of a shape as filled rings in the cloth frame. The form is turned about the middle of its own box, then
 * repeated, and the mirror is taken of all the repeats, so the whole is symmetric about its line. A level band always
 * runs across the whole cloth, so moving or mirroring it sideways changes nothing; a turned one reaches past the
 * cloth's corners on both sides.
 * @param cloth edges of the cloth in mm; only bands use it.
 * @returns one outline for each copy; a point is in the shape when any of them covers it. Hidden shapes too: whether
 * they count is for the caller to say.
 */
export function outlinesOf(shape: Shape, cloth: Box): readonly Outline[] {
  const levelBand = shape.form.kind === 'band' && shape.rotation === 0;
  let reach = cloth;
  if (shape.form.kind === 'band' && !levelBand) {
    const middle = boxMiddle(cloth).x;
    const diagonal = Math.hypot(cloth.right - cloth.left, cloth.top - cloth.bottom);
    reach = { ...cloth, left: middle - 2 * diagonal, right: middle + 2 * diagonal };
  }
  const drawn = formRings(shape.form, reach);
  const box = boxOfRings(drawn);
  if (box === null) return [];
  const middle = boxMiddle(box);
  const turned =
    shape.rotation === 0
      ? drawn
      : drawn.map((ring) => mapRing(rotationAbout(shape.rotation, middle.x, middle.y), ring));
  const fillRule = shape.form.kind === 'path' ? shape.form.fillRule : 'nonzero';
  return copies(shape, !levelBand, !levelBand).map((map) => {
    const rings = map === identity ? turned : turned.map((ring) => mapRing(map, ring));
    return { rings, fillRule, box: boxOfRings(rings) ?? box };
  });
}

/** Where the outline crosses the level line at `y`, and which way: +1 rising, -1 falling. */
function crossings(outline: Outline, y: number): { readonly x: number; readonly way: number }[] {
  const found: { x: number; way: number }[] = [];
  if (y < outline.box.bottom || y >= outline.box.top) return found;
  for (const ring of outline.rings) {
    let fromX = ring[ring.length - 2]!;
    let fromY = ring[ring.length - 1]!;
    for (let at = 0; at < ring.length; at += 2) {
      const toX = ring[at]!;
      const toY = ring[at + 1]!;
      const rises = fromY <= y && toY > y;
      if (rises || (toY <= y && fromY > y)) {
        // Always from the lower point: an edge shared by two shapes then gives both the same x to the last bit.
        const x = rises
          ? fromX + ((y - fromY) * (toX - fromX)) / (toY - fromY)
          : toX + ((y - toY) * (fromX - toX)) / (fromY - toY);
        found.push({ x, way: rises ? 1 : -1 });
      }
      fromX = toX;
      fromY = toY;
    }
  }
  return found;
}

const isInside = (outline: Outline, winding: number, count: number): boolean =>
  outline.fillRule === 'nonzero' ? winding !== 0 : count % 2 === 1;

/**
 * Whether a point of the cloth lies in the outline. Left and lower edges belong to it, right and upper edges don't, so
 * two shapes that share an edge neither overlap nor leave a gap.
 */
export function covers(outline: Outline, x: number, y: number): boolean {
  if (x < outline.box.left || x >= outline.box.right) return false;
  let winding = 0;
  let count = 0;
  for (const crossing of crossings(outline, y)) {
    if (crossing.x > x) {
      winding += crossing.way;
      count++;
    }
  }
  return isInside(outline, winding, count);
}

/**
 * The stretches of the level line at `y` that lie in the outline, by the same rule as `covers`: each holds its left
 * end and not its right.
 * @returns from, to, from, to … in mm, rising, never touching.
 */
export function spansAt(outline: Outline, y: number): Float64Array {
  const found = crossings(outline, y).sort((one, other) => one.x - other.x);
  const spans: number[] = [];
  let winding = 0;
  let inside = false;
  for (let at = 0; at < found.length; ) {
    const x = found[at]!.x;
    while (at < found.length && found[at]!.x === x) {
      winding += found[at]!.way;
      at++;
    }
    // The count from the left is odd exactly when the count from the right is: crossings of a closed ring are even.
    const nowInside = isInside(outline, winding, at);
    if (nowInside !== inside) spans.push(x);
    inside = nowInside;
  }
  return Float64Array.from(spans);
}
