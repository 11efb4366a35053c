import {
  type Camera,
  cameraFromVector,
  cameraProjection,
  cameraSteps,
  cameraToVector,
  lensOf,
  type PictureSize,
  planeHomography,
} from './camera.ts';
import type { EarlierLoom } from './earlierLoom.ts';
import type { Expected } from './expected.ts';
import { cholesky } from './leastSquares.ts';
import { type CellZone, cellZones, faceHeight } from './loomCells.ts';
import { toLoom } from './loomPose.ts';
import { evidenceSlopes, type PoseEvidence } from './poseEvidence.ts';
import { FITTED } from './poseFit.ts';

/** One place of wood or cloth seen in both photographs, told along one direction of the loom. */
export interface SharedPlace {
  readonly zone: CellZone;
  readonly before: { readonly px: number; readonly py: number };
  readonly now: { readonly px: number; readonly py: number };
  readonly ux: number;
  readonly uy: number;
  /** How well the two are told to be the same place, mm. */
  readonly sigma: number;
}

/** By how much cloth may have moved on the loom between the pictures, all of it alike along x and y, mm. */
const CLOTH_MOVES = 0.3;
/** Forward difference for a face's height, mm. */
const HEIGHT_STEP = 0.1;

/** What both pictures say together of the new one's camera. */
export interface PlacesEvidence extends PoseEvidence {
  /** By how much each place is out under a camera, mm along its direction. */
  readonly out: (parameters: ArrayLike<number>) => Float64Array;
  /** Standard uncertainty of that, shared errors included, mm. */
  readonly sigmas: Float64Array;
}

/**
 * Places seen in both photographs as evidence for the new one's pose. A place is out by the way between where the new
 * camera puts it and where the earlier one does, both on the face it lies on. Beside the matching's own error all
 * places share errors: the earlier pose's (its covariance, through where it puts them), the faces' heights (parallax:
 * nothing where both cameras stood alike), and that cloth may have moved. The misfits are whitened by the whole of
 * their covariance (generalised least squares: Aitken 1935).
 * @param near the new camera, nearly: parallax is that of the cameras as they stand.
 * @param scale by which the matching's own sigmas are taken larger than said.
 */
export function placesEvidence(
  places: readonly SharedPlace[],
  earlier: Pick<EarlierLoom, 'photo' | 'camera' | 'wood' | 'covariance' | 'mirrored'>,
  expected: Expected,
  size: PictureSize,
  mirrored: boolean,
  near: Camera,
  scale = 1,
): PlacesEvidence | null {
  const n = places.length;
  const heights = new Map(cellZones.map((zone) => [zone, faceHeight(zone, expected, earlier.wood)]));
  const seenFrom = (vector: ArrayLike<number>, from: PictureSize, turned: boolean, which: 'before' | 'now') => {
    const camera = cameraFromVector(vector);
    const projection = cameraProjection(camera, from, turned);
    const lens = lensOf(camera, from);
    return (raised: number): Float64Array => {
      const planes = new Map(
        cellZones.map((zone) => [zone, planeHomography(projection, heights.get(zone)!.z + raised)]),
      );
      return Float64Array.from(places, (place) => {
        const seen = place[which];
        const at = toLoom({ homography: planes.get(place.zone)!, lens }, seen.px, seen.py);
        return place.ux * at.x + place.uy * at.y;
      });
    };
  };
  const vector = cameraToVector(earlier.camera);
  const before = (v: ArrayLike<number>) => seenFrom(v, earlier.photo, earlier.mirrored, 'before');
  const there = before(vector);
  const where = there(0);
  const out = (parameters: ArrayLike<number>): Float64Array =>
    seenFrom(parameters, size, mirrored, 'now')(0).map((value, k) => value - where[k]!);
  const raisedNow = seenFrom(cameraToVector(near), size, mirrored, 'now');
  const [nowUp, beforeUp, nowThere] = [raisedNow(HEIGHT_STEP), there(HEIGHT_STEP), raisedNow(0)];
  const byHeight = nowUp.map((value, k) => (value - beforeUp[k]! - nowThere[k]! + where[k]!) / HEIGHT_STEP);
  const rail = (zone: CellZone) => zone === 'left rail' || zone === 'right rail';
  // How the misfits move with the earlier pose: its camera, then the rails' depth, which lowers their faces.
  const columns = cameraSteps.map((step, i) => {
    const moved = vector.slice();
    moved[i]! += step;
    return before(moved)(0).map((value, k) => (where[k]! - value) / step);
  });
  const none = new Float64Array(n);
  const byRails = byHeight.map((value, k) => (rail(places[k]!.zone) ? -value : 0));
  columns.push(none, none, byRails);
  const spread = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let p = 0; p < FITTED; p++) {
      let through = 0;
      for (let q = 0; q < FITTED; q++) through += columns[q]![i]! * earlier.covariance[q * FITTED + p]!;
      if (through === 0) continue;
      for (let j = 0; j < n; j++) spread[i * n + j]! += through * columns[p]![j]!;
    }
    for (let j = 0; j < n; j++) {
      const [one, other] = [places[i]!, places[j]!];
      if (one.zone !== other.zone) continue;
      spread[i * n + j]! += byHeight[i]! * byHeight[j]! * heights.get(one.zone)!.sigma ** 2;
      if (one.zone === 'cloth') spread[i * n + j]! += (one.ux * other.ux + one.uy * other.uy) * CLOTH_MOVES ** 2;
    }
    spread[i * n + i]! += (scale * places[i]!.sigma) ** 2;
  }
  const factor = cholesky(spread, n);
  if (!factor) return null;
  return {
    freedom: n,
    out,
    sigmas: Float64Array.from({ length: n }, (_, k) => Math.sqrt(spread[k * n + k]!)),
    misfits: (parameters) => {
      const misfit = out(parameters);
      for (let i = 0; i < n; i++) {
        for (let k = 0; k < i; k++) misfit[i]! -= factor[i * n + k]! * misfit[k]!;
        misfit[i]! /= factor[i * n + i]!;
      }
      return misfit;
    },
  };
}

/** A parameter over whose whole range the misfits move by less than this many sigmas is as good as unseen. */
const TOLD = 0.1;

/**
 * The same evidence in as few figures as there are things it tells: misfits along the directions in which the camera
 * can move them (an orthonormal basis by Gram and Schmidt). What the places say against each other is no more in it, so
 * that a disagreement with other references isn't thinned by their number.
 * @param spans how far each camera parameter may range at all: a parameter that moves nothing over that is left out.
 */
export function reducedEvidence(evidence: PoseEvidence, at: Float64Array, spans: readonly number[]): PoseEvidence {
  const { slopes, misfits } = evidenceSlopes(evidence, at, cameraSteps, FITTED);
  const n = misfits.length;
  const basis: Float64Array[] = [];
  spans.forEach((span, i) => {
    const column = Float64Array.from({ length: n }, (_, k) => slopes[k * FITTED + i]! * span);
    // Twice over: once leaves rounding errors in what is nearly told already.
    for (let round = 0; round < 2; round++) {
      for (const one of basis) {
        let along = 0;
        for (let k = 0; k < n; k++) along += one[k]! * column[k]!;
        for (let k = 0; k < n; k++) column[k]! -= along * one[k]!;
      }
    }
    const length = Math.hypot(...column);
    if (length > TOLD) basis.push(column.map((value) => value / length));
  });
  return {
    freedom: basis.length,
    misfits: (parameters) => {
      const all = evidence.misfits(parameters);
      return Float64Array.from(basis, (one) => {
        let sum = 0;
        for (let k = 0; k < n; k++) sum += one[k]! * all[k]!;
        return sum;
      });
    },
  };
}
