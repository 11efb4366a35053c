import { invertSymmetric } from './leastSquares.ts';

/** Something known of the pose that isn't a straight thing: a clicked place, a length, what is known of the camera. */
export interface PoseEvidence {
  /** How many of the misfits are independent: those that the thing's own place leaves over. */
  readonly freedom: number;
  /** Misfits, each divided by its own sigma, under the parameters of a fit (`fitPose`): camera first. */
  readonly misfits: (parameters: ArrayLike<number>) => Float64Array;
}

/** Steps for the numerical derivative: the camera's (`cameraSteps`), then the wood's, which no evidence feels. */
const columnsFelt = 9;

/** Derivatives of the misfits, row by row, `columns` to a row. */
export function evidenceSlopes(
  evidence: PoseEvidence,
  parameters: Float64Array,
  steps: readonly number[],
  columns: number,
): { readonly misfits: Float64Array; readonly slopes: Float64Array } {
  const misfits = evidence.misfits(parameters);
  const slopes = new Float64Array(misfits.length * columns);
  for (let i = 0; i < columnsFelt; i++) {
    const moved = parameters.slice();
    moved[i]! += steps[i]!;
    const there = evidence.misfits(moved);
    for (let k = 0; k < misfits.length; k++) slopes[k * columns + i] = (there[k]! - misfits[k]!) / steps[i]!;
  }
  return { misfits, slopes };
}

/**
 * Squared distance of what the evidence says from what a fit without it says, in the sigmas of both together
 * (Mahalanobis): chi-square with `freedom` degrees of freedom where both are right.
 * @param covariance of the fit, `columns` × `columns`.
 */
export function distanceFromFit(
  evidence: PoseEvidence,
  parameters: Float64Array,
  covariance: Float64Array,
  steps: readonly number[],
  columns: number,
): number {
  const { misfits, slopes } = evidenceSlopes(evidence, parameters, steps, columns);
  const n = misfits.length;
  const spread = new Float64Array(n * n);
  for (let a = 0; a < n; a++) {
    for (let b = 0; b < n; b++) {
      let sum = a === b ? 1 : 0;
      for (let i = 0; i < columnsFelt; i++) {
        for (let j = 0; j < columnsFelt; j++) {
          sum += slopes[a * columns + i]! * covariance[i * columns + j]! * slopes[b * columns + j]!;
        }
      }
      spread[a * n + b] = sum;
    }
  }
  const weight = invertSymmetric(spread, n);
  let squared = 0;
  for (let a = 0; a < n; a++) for (let b = 0; b < n; b++) squared += misfits[a]! * weight[a * n + b]! * misfits[b]!;
  return squared;
}

/**
 * Chi-square that is passed as seldom as three sigmas by one figure, 0.27 %: Wilson & Hilferty's cube root (PNAS 17,
 * 1931), 2.782 being the normal deviate of that share on one side.
 */
export function mostDistance(freedom: number): number {
  const share = 2 / (9 * freedom);
  return freedom * (1 - share + 2.782 * Math.sqrt(share)) ** 3;
}
