import { lensOf, type PictureSize, undistort } from './camera.ts';
import { leastSquares } from './leastSquares.ts';
import type { Lens } from './lens.ts';

/** A lens read from things known to be straight. */
export interface LensReading {
  readonly lens: Lens;
  readonly k1Sigma: number;
  /** Root mean square distance of the points from their straight lines, undistorted px, before and after. */
  readonly bentPx: number;
  readonly straightPx: number;
  /** Radial terms the lines support: none, k1, or k1 and k2. */
  readonly terms: 0 | 1 | 2;
}

export type LinePoints = readonly { readonly x: number; readonly y: number }[];

/** Distances of a line's points, lens taken out, from the straight line that fits them best. */
function strays(line: LinePoints, lens: Lens): number[] {
  const points = line.map((point) => undistort(lens, point.x, point.y));
  const mx = points.reduce((sum, point) => sum + point.x, 0) / points.length;
  const my = points.reduce((sum, point) => sum + point.y, 0) / points.length;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const point of points) {
    xx += (point.x - mx) ** 2;
    xy += (point.x - mx) * (point.y - my);
    yy += (point.y - my) ** 2;
  }
  const along = 0.5 * Math.atan2(2 * xy, xx - yy);
  return points.map((point) => -Math.sin(along) * (point.x - mx) + Math.cos(along) * (point.y - my));
}

/**
 * Plumb-line lens: the radial terms that make lines straight again (Brown 1971; Devernay & Faugeras 2001). A term is
 * kept only when it lowers the squared misfit by more than an F test at about 1 % allows.
 * @param lines each at least three points of one straight thing, photo px.
 * @returns null when there are too few points.
 */
export function lensFromLines(lines: readonly LinePoints[], size: PictureSize): LensReading | null {
  const used = lines.filter((line) => line.length >= 3);
  const points = used.reduce((sum, line) => sum + line.length, 0);
  // Every line spends two of its points on itself.
  const free = points - 2 * used.length;
  if (free < 4) return null;
  const residuals = (k1: number, k2: number): Float64Array => {
    const lens = lensOf({ k1, k2 }, size);
    return Float64Array.from(used.flatMap((line) => strays(line, lens)));
  };
  const squares = (values: Float64Array) => values.reduce((sum, value) => sum + value * value, 0);
  const rms = (sum: number) => Math.sqrt(sum / points);
  const bent = squares(residuals(0, 0));
  const one = leastSquares([0], (v) => residuals(v[0]!, 0), { steps: [1e-5] });
  const two = leastSquares([one.parameters[0]!, 0], (v) => residuals(v[0]!, v[1]!), { steps: [1e-5, 1e-5] });
  const worth = (before: number, after: number, left: number) => before - after > (7 * after) / left;
  const spread = (cost: number, variance: number, terms: number) => Math.sqrt((cost / (free - terms)) * variance);
  if (!worth(bent, one.cost, free - 1)) {
    return {
      lens: lensOf({ k1: 0, k2: 0 }, size),
      k1Sigma: spread(one.cost, one.covariance[0]!, 1),
      bentPx: rms(bent),
      straightPx: rms(bent),
      terms: 0,
    };
  }
  if (!worth(one.cost, two.cost, free - 2)) {
    return {
      lens: lensOf({ k1: one.parameters[0]!, k2: 0 }, size),
      k1Sigma: spread(one.cost, one.covariance[0]!, 1),
      bentPx: rms(bent),
      straightPx: rms(one.cost),
      terms: 1,
    };
  }
  return {
    lens: lensOf({ k1: two.parameters[0]!, k2: two.parameters[1]! }, size),
    k1Sigma: spread(two.cost, two.covariance[0]!, 2),
    bentPx: rms(bent),
    straightPx: rms(two.cost),
    terms: 2,
  };
}
