import type { Camera } from './camera.ts';
import { type CameraPrior, notchX } from './coarseCamera.ts';
import type { Expected } from './expected.ts';
import { mapOf } from './firstLook.ts';
import { notchShift, railProfile } from './railEdges.ts';
import type { Photo } from './raster.ts';
import { type ColourRaster, reducedCoordinate } from './reduce.ts';
import { type RefinedPose, refinePose } from './refinePose.ts';
import { stringsSure } from './stringsSure.ts';

/** Least share of the frame's edges that must be there for a loom to be believed. */
export const FRAME_SEEN = 0.6;

/** Share of the frame's edges at which nothing is left to doubt. */
export const FRAME_CLEAR = 0.85;

/** Share below which no whole notch makes a frame of it. */
const FRAME_LOST = 0.3;

/**
 * Refines a look; where the rails then don't stand beside the comb as they should, tries the notches they speak for and
 * keeps the better of both.
 */
export function refineOnNotches(
  photo: Photo,
  picture: ColourRaster,
  factor: number,
  start: Camera,
  expected: Expected,
  prior: CameraPrior,
  mirrored: boolean,
  fromFrame: boolean,
  trace?: (line: string) => void,
): RefinedPose {
  const first = refinePose(photo, picture, factor, start, expected, prior, mirrored, fromFrame, trace);
  if (first.frameSupport > FRAME_CLEAR || first.frameSupport < FRAME_LOST || stringsSure(first)) return first;
  let best = first;
  for (const from of [first.fit.camera, start]) {
    const toPhoto = mapOf(from, photo, mirrored);
    const toSmall = (x: number, y: number) => {
      const seen = toPhoto(x, y, -1.5);
      return { x: reducedCoordinate(seen.x, factor), y: reducedCoordinate(seen.y, factor) };
    };
    const left = notchX(expected, expected.firstNotch - 2);
    const right = notchX(expected, expected.firstNotch + expected.ends + 1);
    const { shift } = notchShift(railProfile(picture, toSmall, expected, left, right), expected, 8, true);
    if (shift === 0) continue;
    trace?.(`the rails speak for notches ${shift} further right`);
    const moved = { ...from, aimX: from.aimX + shift * expected.pitch };
    const again = refinePose(photo, picture, factor, moved, expected, prior, mirrored, fromFrame, trace);
    if (again.frameSupport > best.frameSupport + 0.05) best = again;
    if (best.frameSupport > FRAME_CLEAR) break;
  }
  return best;
}
