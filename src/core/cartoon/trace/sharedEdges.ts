import { simplifyLine, simplifyRing } from '../../geometry/simplify.ts';
import type { SpotRing } from './spotRings.ts';
import type { Spots } from './spots.ts';

/** Whether more than two spots meet at a pixel corner, or two meet crosswise: edges begin and end there. */
function isJunction({ width, height, of }: Spots, x: number, y: number): boolean {
  const at = (px: number, py: number) => (px < 0 || py < 0 || px >= width || py >= height ? -1 : of[py * width + px]!);
  const [a, b, c, d] = [at(x - 1, y - 1), at(x, y - 1), at(x, y), at(x - 1, y)];
  const changes = Number(a !== b) + Number(b !== c) + Number(c !== d) + Number(d !== a);
  return changes > 2;
}

/** Corner, middles of the sides, corner: the middles cut the stairs of the pixels. */
function throughMiddles(corners: ArrayLike<number>, closed: boolean): Float64Array {
  const count = corners.length / 2;
  const points: number[] = [];
  if (!closed) points.push(corners[0]!, corners[1]!);
  for (let at = 0; at < (closed ? count : count - 1); at++) {
    const next = (at + 1) % count;
    points.push((corners[2 * at]! + corners[2 * next]!) / 2, (corners[2 * at + 1]! + corners[2 * next + 1]!) / 2);
  }
  if (!closed) points.push(corners[2 * count - 2]!, corners[2 * count - 1]!);
  return Float64Array.from(points);
}

function reversed(points: ArrayLike<number>): number[] {
  const back: number[] = [];
  for (let at = points.length - 2; at >= 0; at -= 2) back.push(points[at]!, points[at + 1]!);
  return back;
}

/** Whether the points read backwards come first: both spots beside an edge then simplify it the same way round. */
function backwardsFirst(points: ArrayLike<number>): boolean {
  for (let at = 0; at < points.length; at += 2) {
    const other = points.length - 2 - at;
    if (points[at] !== points[other]) return points[at]! > points[other]!;
    if (points[at + 1] !== points[other + 1]) return points[at + 1]! > points[other + 1]!;
  }
  return false;
}

function simplifiedArc(corners: readonly number[], tolerance: number): number[] {
  const turn = backwardsFirst(corners);
  const kept = simplifyLine(throughMiddles(turn ? reversed(corners) : corners, false), tolerance);
  return turn ? reversed(kept) : [...kept];
}

function simplifiedLoop(corners: Int32Array, tolerance: number): Float64Array {
  const count = corners.length / 2;
  // From the topmost corner, the leftmost of those, and always the same way round.
  let first = 0;
  for (let at = 1; at < count; at++) {
    const dy = corners[2 * at + 1]! - corners[2 * first + 1]!;
    if (dy < 0 || (dy === 0 && corners[2 * at]! < corners[2 * first]!)) first = at;
  }
  const turned = [...corners.subarray(2 * first), ...corners.subarray(0, 2 * first)];
  // A loop walked the other way has the same first corner but its neighbours the other way about.
  const turn = turned[2]! === turned[0]!;
  const onward = turn ? [turned[0]!, turned[1]!, ...reversed(turned.slice(2))] : turned;
  const kept = simplifyRing(throughMiddles(onward, true), tolerance);
  return turn ? Float64Array.from(reversed(kept)) : kept;
}

/**
 * A ring with few corners, in pixels. Edges are cut where three spots meet and each is simplified by itself, always
 * the same way round, so the spots on both sides of it keep exactly the same edge: no gap, no overlap.
 * @param tolerance how far an edge may move, pixels.
 */
export function simplifiedRing(spots: Spots, ring: SpotRing, tolerance: number): Float64Array {
  const { corners } = ring;
  const count = corners.length / 2;
  const junctions: number[] = [];
  for (let at = 0; at < count; at++) {
    if (isJunction(spots, corners[2 * at]!, corners[2 * at + 1]!)) junctions.push(at);
  }
  if (junctions.length === 0) return simplifiedLoop(corners, tolerance);
  const points: number[] = [];
  for (const [index, from] of junctions.entries()) {
    const to = junctions[(index + 1) % junctions.length]!;
    const arc: number[] = [];
    const length = ((to - from + count - 1) % count) + 1;
    for (let step = 0; step <= length; step++) {
      const at = (from + step) % count;
      arc.push(corners[2 * at]!, corners[2 * at + 1]!);
    }
    const kept = simplifiedArc(arc, tolerance);
    for (let at = 0; at < kept.length - 2; at++) points.push(kept[at]!);
  }
  return Float64Array.from(points);
}
