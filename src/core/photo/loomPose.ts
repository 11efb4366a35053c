import type { Reason, ReferenceReading } from '../model/check.ts';
import type { Measurement } from '../model/measurement.ts';
import type { Camera } from './camera.ts';
import type { WoodShape } from './coarseCamera.ts';
import type { Lens } from './lens.ts';

/** How loom millimetres and photograph pixels answer to each other. */
export interface LoomPose {
  /** 3 × 3 row-major: loom mm (x, y, 1) to undistorted photo px. */
  readonly homography: Float64Array;
  readonly lens: Lens;
  /** Focal length of the undistorted picture, px: what the fit found together with what is usual. */
  readonly focal: number;
  readonly reference: ReferenceReading;
  /**
   * Standard uncertainty, in mm along x and y, of where the pose puts a loom point: scale and base error that all
   * readings share, apart from the local edge noise of each.
   */
  readonly sharedSigma: (x: number, y: number) => { readonly x: number; readonly y: number };
}

/** The bare part of one end followed up the picture. */
export interface StringTrack {
  /** End index, 0-based from the left with the loom upright. */
  readonly end: number;
  /** Why it was not seen; null when it was. */
  readonly why: string | null;
  /** x at the notches, loom mm. */
  readonly notchX: Measurement | null;
  /** Points on the bare string above the fell, loom mm, y rising. */
  readonly bare: readonly { readonly y: number; readonly x: number; readonly sigma: number }[];
}

/** A camera and the wood as fitted to a picture, with their covariance: in the order of a `PoseFit`. */
export interface TiedCamera {
  readonly camera: Camera;
  readonly wood: WoodShape;
  readonly covariance: Float64Array;
}

/** What locating the loom gives the later stages. */
export interface LocatedLoom {
  readonly pose: LoomPose;
  /** Null where clicked corners alone say how the picture was taken: they show too little of the camera to refer to. */
  readonly tied: TiedCamera | null;
  /** Null where the picture doesn't hold the whole warp. */
  readonly endsCounted: number | null;
  readonly tracks: readonly StringTrack[];
  /** References that were given and left out, each with why. */
  readonly remarks: readonly Reason[];
}

/** Loom mm to photograph pixels, lens included. */
export function toPhoto(pose: Pick<LoomPose, 'homography' | 'lens'>, x: number, y: number): { x: number; y: number } {
  const h = pose.homography;
  const w = h[6]! * x + h[7]! * y + h[8]!;
  const ux = (h[0]! * x + h[1]! * y + h[2]!) / w;
  const uy = (h[3]! * x + h[4]! * y + h[5]!) / w;
  const { centreX, centreY, halfDiagonal, k1, k2 } = pose.lens;
  const dx = ux - centreX;
  const dy = uy - centreY;
  const r2 = (dx * dx + dy * dy) / (halfDiagonal * halfDiagonal);
  const stretch = 1 + k1 * r2 + k2 * r2 * r2;
  return { x: centreX + dx * stretch, y: centreY + dy * stretch };
}

/** Photograph pixels to loom mm, lens taken out by Newton's method. */
export function toLoom(pose: Pick<LoomPose, 'homography' | 'lens'>, px: number, py: number): { x: number; y: number } {
  const { centreX, centreY, halfDiagonal, k1, k2 } = pose.lens;
  const dx = (px - centreX) / halfDiagonal;
  const dy = (py - centreY) / halfDiagonal;
  const distorted = Math.hypot(dx, dy);
  let r = distorted;
  for (let step = 0; step < 8; step++) {
    const r2 = r * r;
    const error = r * (1 + k1 * r2 + k2 * r2 * r2) - distorted;
    r -= error / (1 + 3 * k1 * r2 + 5 * k2 * r2 * r2);
  }
  const shrink = distorted > 1e-12 ? r / distorted : 1;
  const ux = centreX + dx * shrink * halfDiagonal;
  const uy = centreY + dy * shrink * halfDiagonal;
  const h = pose.homography;
  // Solve H (x, y, 1) ~ (ux, uy, 1) by Cramer's rule on the two linear equations it gives.
  const a = h[0]! - ux * h[6]!;
  const b = h[1]! - ux * h[7]!;
  const c = ux * h[8]! - h[2]!;
  const d = h[3]! - uy * h[6]!;
  const e = h[4]! - uy * h[7]!;
  const f = uy * h[8]! - h[5]!;
  const determinant = a * e - b * d;
  return { x: (c * e - b * f) / determinant, y: (a * f - c * d) / determinant };
}
