import {
  type Camera,
  cameraFromVector,
  cameraProjection,
  cameraSteps,
  cameraToVector,
  lensOf,
  type PictureSize,
  projectPoint,
} from './camera.ts';
import type { Expected } from './expected.ts';
import { leastSquares } from './leastSquares.ts';
import type { Photo } from './raster.ts';

/** What is known of the camera before it has taken this picture. */
export interface CameraPrior {
  /** ln of the focal length in px. */
  readonly logFocal: number;
  readonly logFocalSigma: number;
  readonly k1: number;
  readonly k1Sigma: number;
  readonly k2: number;
  readonly k2Sigma: number;
}

/**
 * A hand-held camera: main cameras of phones see 60–75° over the long side, a focal length about 0.83 of it, give or
 * take a quarter (common practice, no source); lenses bend by a few per cent at the corner. The focal length that a
 * photograph's file tells takes the usual one's place, no surer: the picture may have been cut down since.
 */
export const usualCamera = (photo: PictureSize & Pick<Photo, 'focal'>): CameraPrior => ({
  logFocal: Math.log(
    photo.focal === undefined
      ? 0.83 * Math.max(photo.width, photo.height)
      : photo.focal * Math.hypot(photo.width, photo.height),
  ),
  logFocalSigma: 0.25,
  k1: 0,
  k1Sigma: 0.05,
  k2: 0,
  k2Sigma: 1e-4,
});

/** A loom point (mm) seen at a photo pixel. */
export interface Sighting {
  readonly x: number;
  readonly y: number;
  /** 1 when y was taken from the top bar's edge, −1 from the bottom bar's, 0 when it is known otherwise. */
  readonly bar: -1 | 0 | 1;
  readonly px: number;
  readonly py: number;
}

/**
 * Bars' inner edges are rounded: what is seen as the edge lies this far on the wood's side of the opening's edge, mm
 * (edges are rounded by about a millimetre: value from memory).
 */
export const BAR_ROUNDING = { mm: 0.8, sigma: 0.7 } as const;

/** The same for the wood's outer edges; a plan's bar height is rarely measured to better than half a millimetre. */
export const OUTER_ROUNDING = { mm: 0.2, sigma: 0.6 } as const;

/**
 * How far the rails' faces lie below the bars', mm: flush with them or let in below (common practice, no source). One
 * depth for both; the nearer the picture's middle an edge is seen for it.
 */
export const RAIL_DEPTH = { mm: 1, sigma: 4 } as const;

/** What a loom's wood is like: inner and outer rounding and the depth of the rails, mm. */
export type WoodShape = readonly [inner: number, outer: number, railDepth: number];
export const usualWood: WoodShape = [BAR_ROUNDING.mm, OUTER_ROUNDING.mm, RAIL_DEPTH.mm];

/** x of a notch in the loom frame, mm: the notches' middle is the opening's. */
export const notchX = (expected: Pick<Expected, 'pitch' | 'notches'>, notch: number): number =>
  (notch - (expected.notches - 1) / 2) * expected.pitch;

/** The camera that best explains where known points of the string plane are seen, outliers held in check. */
export function cameraFromSightings(
  sightings: readonly Sighting[],
  start: Camera,
  prior: CameraPrior,
  size: PictureSize,
  mirrored: boolean,
  sigma: number,
  huber = 2.5,
): { camera: Camera; cost: number; rounding: number } {
  const residuals = (v: Float64Array): Float64Array => {
    const camera = cameraFromVector(v);
    const projection = cameraProjection(camera, size, mirrored);
    const lens = lensOf(camera, size);
    const out = new Float64Array(2 * sightings.length + 4);
    const rounding = v[9]!;
    sightings.forEach((sighting, i) => {
      const seen = projectPoint(projection, lens, sighting.x, sighting.y + sighting.bar * rounding, 0);
      out[2 * i] = (seen.x - sighting.px) / sigma;
      out[2 * i + 1] = (seen.y - sighting.py) / sigma;
    });
    out[2 * sightings.length] = (camera.logFocal - prior.logFocal) / prior.logFocalSigma;
    out[2 * sightings.length + 1] = (camera.k1 - prior.k1) / prior.k1Sigma;
    out[2 * sightings.length + 2] = (camera.k2 - prior.k2) / prior.k2Sigma;
    out[2 * sightings.length + 3] = (rounding - BAR_ROUNDING.mm) / BAR_ROUNDING.sigma;
    return out;
  };
  const fit = leastSquares([...cameraToVector(start), BAR_ROUNDING.mm], residuals, {
    steps: [...cameraSteps, 1e-3],
    rounds: 25,
    huber,
  });
  return { camera: cameraFromVector(fit.parameters), cost: fit.cost, rounding: fit.parameters[9]! };
}

/** A camera straight above the loom's middle, to start a fit from. @param turn radians by which the loom is turned in the picture, clockwise. */
export function plumbCamera(
  expected: Expected,
  pxPerMm: number,
  turn: number,
  middle: { x: number; y: number },
  size: PictureSize,
  prior: CameraPrior,
): Camera {
  const focal = Math.exp(prior.logFocal);
  const distance = focal / pxPerMm;
  // The picture's middle, as an offset from the loom's middle, turned back into loom axes.
  const dx = ((size.width - 1) / 2 - middle.x) / pxPerMm;
  const dy = ((size.height - 1) / 2 - middle.y) / pxPerMm;
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  return {
    turn: [0, 0, turn],
    aimX: c * dx + s * dy,
    aimY: expected.openingHeight / 2 - (-s * dx + c * dy),
    logDistance: Math.log(distance),
    logFocal: prior.logFocal,
    k1: prior.k1,
    k2: prior.k2,
  };
}
