import type { FittedLens } from '../model/check.ts';
import type { PictureSize } from './camera.ts';
import type { PoseEvidence } from './poseEvidence.ts';
import type { PoseFit } from './poseFit.ts';
import { FITTED } from './poseFit.ts';

/**
 * What a lens may change from one picture to the next: focusing moves its focal length by some per cent and its bend
 * with it (value from memory).
 */
const K1_CHANGES = 0.004;
const FOCAL_CHANGES = 0.03;

const diagonal = (size: PictureSize): number => Math.hypot(size.width, size.height);

/** What a fit found of the lens. */
export const lensOfFit = (
  { camera, covariance }: Pick<PoseFit, 'camera' | 'covariance'>,
  size: PictureSize,
): FittedLens => ({
  k1: camera.k1,
  k1Sigma: Math.sqrt(covariance[7 * FITTED + 7]!),
  focal: Math.exp(camera.logFocal) / diagonal(size),
  focalShare: Math.sqrt(covariance[6 * FITTED + 6]!),
});

/** What earlier pictures by the same camera say of this one's lens. */
export function lensEvidence(lens: FittedLens, size: PictureSize): PoseEvidence {
  const logFocal = Math.log(lens.focal * diagonal(size));
  const focalSigma = Math.hypot(lens.focalShare, FOCAL_CHANGES);
  const k1Sigma = Math.hypot(lens.k1Sigma, K1_CHANGES);
  return {
    freedom: 2,
    misfits: (v) => Float64Array.of((v[6]! - logFocal) / focalSigma, (v[7]! - lens.k1) / k1Sigma),
  };
}
