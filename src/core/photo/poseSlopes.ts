import type { LoomPose } from './loomPose.ts';

type BarePose = Pick<LoomPose, 'homography' | 'lens'>;

/** Photo points on the loom under one pose, and under each of several poses a small step away from it. */
export interface PoseSlopes {
  /** Loom coordinate asked for of point k, mm, and the other one. */
  readonly across: Float64Array;
  readonly along: Float64Array;
  /** `columns` a point, the first of them filled: change of `across` for a unit step of each parameter. */
  readonly slopes: Float64Array;
}

/**
 * Places of photo points and their derivatives by forward differences. Most steps leave the lens alone, so it is taken
 * out of a point once for all of them.
 * @param nudged the pose after a step of `steps[i]` of parameter i; all poses belong to one size of picture.
 * @param columns row length of `slopes`, at least as many as there are nudged poses.
 */
export function poseSlopes(
  base: BarePose,
  nudged: readonly BarePose[],
  steps: readonly number[],
  axis: 'x' | 'y',
  points: readonly { readonly px: number; readonly py: number }[],
  columns: number,
): PoseSlopes {
  const n = points.length;
  const across = new Float64Array(n);
  const along = new Float64Array(n);
  const slopes = new Float64Array(n * columns);
  const upright = axis === 'x';
  const { centreX, centreY, halfDiagonal, k1, k2 } = base.lens;
  for (let k = 0; k < n; k++) {
    const point = points[k]!;
    const dx = (point.px - centreX) / halfDiagonal;
    const dy = (point.py - centreY) / halfDiagonal;
    const seen = Math.hypot(dx, dy);
    const shrink = shrinkOf(k1, k2, seen);
    const ux = centreX + dx * shrink * halfDiagonal;
    const uy = centreY + dy * shrink * halfDiagonal;
    const here = onLoom(base.homography, ux, uy, upright);
    across[k] = here;
    along[k] = onLoom(base.homography, ux, uy, !upright);
    for (let i = 0; i < nudged.length; i++) {
      const { homography, lens } = nudged[i]!;
      let moved: number;
      if (lens.k1 === k1 && lens.k2 === k2) moved = onLoom(homography, ux, uy, upright);
      else {
        const other = shrinkOf(lens.k1, lens.k2, seen);
        const x = centreX + dx * other * halfDiagonal;
        const y = centreY + dy * other * halfDiagonal;
        moved = onLoom(homography, x, y, upright);
      }
      slopes[k * columns + i] = (moved - here) / steps[i]!;
    }
  }
  return { across, along, slopes };
}

/** Undistorted radius over the one seen, by Newton's method until it stands still. */
function shrinkOf(k1: number, k2: number, seen: number): number {
  if (!(seen > 1e-12)) return 1;
  let r = seen;
  for (let step = 0; step < 8; step++) {
    const r2 = r * r;
    const next = r - (r * (1 + k1 * r2 + k2 * r2 * r2) - seen) / (1 + 3 * k1 * r2 + 5 * k2 * r2 * r2);
    if (next === r) break;
    r = next;
  }
  return r / seen;
}

/** One loom coordinate of an undistorted photo point, by Cramer's rule. */
function onLoom(h: Float64Array, ux: number, uy: number, wantX: boolean): number {
  const a = h[0]! - ux * h[6]!;
  const b = h[1]! - ux * h[7]!;
  const c = ux * h[8]! - h[2]!;
  const d = h[3]! - uy * h[6]!;
  const e = h[4]! - uy * h[7]!;
  const f = uy * h[8]! - h[5]!;
  return (wantX ? c * e - b * f : a * f - c * d) / (a * e - b * d);
}
