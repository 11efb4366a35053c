import { simplifyRing } from '../geometry/simplify.ts';
import { smoothRing } from '../geometry/smoothRing.ts';
import { failure, type Outcome, success } from '../model/outcome.ts';
import type { ShapeForm } from '../model/piece.ts';
import { signedRingArea } from './area.ts';

/** Steadies a shaky hand: each point becomes the mean of itself and its neighbours, weighted 1 : 2 : 1. */
function steadied(points: readonly { readonly x: number; readonly y: number }[]): Float64Array {
  const ring = new Float64Array(points.length * 2);
  for (let at = 0; at < points.length; at++) {
    const before = points[(at + points.length - 1) % points.length]!;
    const here = points[at]!;
    const after = points[(at + 1) % points.length]!;
    ring[2 * at] = (before.x + 2 * here.x + after.x) / 4;
    ring[2 * at + 1] = (before.y + 2 * here.y + after.y) / 4;
  }
  return ring;
}

/**
 * A stroke drawn by hand as a closed, smooth path in cloth mm; its end is joined to its start.
 * @param stroke points in the order drawn, cloth mm; those nearer than 0.3 mm to the last one kept are left out.
 * @param tolerance how far the line may move in tidying, mm.
 */
export function freehandForm(
  stroke: readonly { readonly x: number; readonly y: number }[],
  tolerance: number,
): Outcome<ShapeForm, 'stroke-too-short'> {
  const spaced: { x: number; y: number }[] = [];
  for (const point of stroke) {
    const last = spaced.at(-1);
    if (!Number.isFinite(point.x) || !Number.isFinite(point.y)) continue;
    if (last === undefined || Math.hypot(point.x - last.x, point.y - last.y) >= 0.3) spaced.push(point);
  }
  const ring = spaced.length < 3 ? new Float64Array(0) : simplifyRing(steadied(spaced), tolerance);
  if (ring.length < 6 || Math.abs(signedRingArea(ring)) < 4) {
    return failure(
      'stroke-too-short',
      'The stroke encloses too little to weave.',
      'Draw round the area in one stroke; its end joins its start.',
    );
  }
  return success({ kind: 'path', commands: smoothRing(ring, 1.2), fillRule: 'nonzero', origin: 'freehand' });
}
