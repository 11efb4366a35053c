import type { StringTrack } from './loomPose.ts';

/** The course of one bare end as x = a + b t + c t², t = (y − middle) / 100 mm, loom mm. */
export interface TrackLine {
  readonly x: (y: number) => number;
  /** Standard uncertainty of x at a height, mm: grows away from the points it was drawn through. */
  readonly sigma: (y: number) => number;
}

/** A bare string bows by about this much over 100 mm when it bows at all, mm. */
const USUAL_BOW = 0.1;
/** What a string's middle can't be known better than, mm. */
const FLOOR = 0.03;

/**
 * Draws the course of an end through its bare points by weighted least squares. The bend is held back by a prior,
 * because a taut string is nearly straight.
 */
export function trackLine(points: StringTrack['bare']): TrackLine | null {
  if (points.length < 2) return null;
  const middle = points.reduce((sum, point) => sum + point.y, 0) / points.length;
  const normal = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 1 / (USUAL_BOW * USUAL_BOW)],
  ];
  const right = [0, 0, 0];
  for (const point of points) {
    const t = (point.y - middle) / 100;
    const basis = [1, t, t * t];
    const weight = 1 / (point.sigma * point.sigma + FLOOR * FLOOR);
    for (let i = 0; i < 3; i++) {
      right[i]! += weight * basis[i]! * point.x;
      for (let j = 0; j < 3; j++) normal[i]![j]! += weight * basis[i]! * basis[j]!;
    }
  }
  const inverse = invertSymmetric3(normal);
  if (!inverse) return null;
  const [a, b, c] = inverse.map((row) => row[0]! * right[0]! + row[1]! * right[1]! + row[2]! * right[2]!) as [
    number,
    number,
    number,
  ];
  return {
    x: (y) => {
      const t = (y - middle) / 100;
      return a + b * t + c * t * t;
    },
    sigma: (y) => {
      const t = (y - middle) / 100;
      const basis = [1, t, t * t];
      let variance = 0;
      for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) variance += basis[i]! * inverse[i]![j]! * basis[j]!;
      return Math.sqrt(variance + FLOOR * FLOOR);
    },
  };
}

function invertSymmetric3(m: readonly (readonly number[])[]): number[][] | null {
  const a = m[0]![0]!;
  const b = m[0]![1]!;
  const c = m[0]![2]!;
  const d = m[1]![1]!;
  const e = m[1]![2]!;
  const f = m[2]![2]!;
  const determinant = a * (d * f - e * e) - b * (b * f - c * e) + c * (b * e - c * d);
  if (!(Math.abs(determinant) > 1e-18)) return null;
  const s = 1 / determinant;
  return [
    [(d * f - e * e) * s, (c * e - b * f) * s, (b * e - c * d) * s],
    [(c * e - b * f) * s, (a * f - c * c) * s, (b * c - a * e) * s],
    [(b * e - c * d) * s, (b * c - a * e) * s, (a * d - b * b) * s],
  ];
}
