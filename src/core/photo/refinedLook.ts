import type { Camera } from './camera.ts';
import { cameraOtherWayUp } from './coarsePose.ts';
import { mapOf } from './firstLook.ts';
import type { LocateOptions, View } from './locateOptions.ts';
import { reducedCoordinate } from './reduce.ts';
import { FRAME_SEEN, refineOnNotches } from './refineOnNotches.ts';
import type { RefinedPose } from './refinePose.ts';
import { baseEvidence } from './uprightness.ts';

/** A first camera, and whether it was found by the frame, to a millimetre or two, or else by the strings. */
export interface Look {
  readonly camera: Camera;
  readonly fromFrame: boolean;
}

/** Colour change by which one beginning of the cloth must outdo another, grey levels. */
export const BASE_STEPS = 30;

/** A look refined, the way up that the cloth speaks for. */
export function refinedLook(view: View, { camera, fromFrame }: Look, options: LocateOptions): RefinedPose {
  const { photo, picture, factor, expected, prior, mirrored } = view;
  const refine = (from: Camera): RefinedPose =>
    refineOnNotches(photo, picture, factor, from, expected, prior, mirrored, fromFrame, options.trace);
  const base = (of: Camera): number => baseEvidence(picture, reducedMap(of, view), expected);
  const refined = refine(camera);
  const other = cameraOtherWayUp(refined.fit.camera, expected);
  // The frame looks the same either way up; the cloth begins at the bottom.
  if (refined.frameSupport < FRAME_SEEN || base(other) <= 1.4 * base(refined.fit.camera) + BASE_STEPS) return refined;
  options.trace?.('the cloth begins at the other bar');
  return refine(other);
}

/** Loom mm to pixels of the reduced picture. */
export function reducedMap(camera: Camera, { photo, mirrored, factor }: View) {
  const map = mapOf(camera, photo, mirrored);
  return (x: number, y: number, z = 0) => {
    const seen = map(x, y, z);
    return { x: reducedCoordinate(seen.x, factor), y: reducedCoordinate(seen.y, factor) };
  };
}
