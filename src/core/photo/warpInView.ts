import type { Camera, PictureSize } from './camera.ts';
import { notchX } from './coarseCamera.ts';
import type { Expected } from './expected.ts';
import { mapOf } from './firstLook.ts';

/** What a picture that needn't hold the whole loom shows of the warp. Places count from the plan's first end. */
export interface WarpInView {
  /** Loom y from which a place's string is seen downwards; null where that isn't near its notch or not in the picture. */
  readonly topOf: (place: number) => number | null;
  /** Whether all of a place that cloth can cover lies in the picture. */
  readonly whole: (place: number) => boolean;
}

/** Farther from its notch than this a string's course says no more at which notch it hangs, mm. */
const FARTHEST = 25;
/** Strings are looked for from here below the top bar, and cloth is read from here below its base, mm. */
const BELOW_BAR = 2;
const BELOW_BASE = 7;
/** Shares of a pitch to both sides that are looked at too. */
const ASIDE = 0.6;

export function warpInView(camera: Camera, photo: PictureSize, mirrored: boolean, expected: Expected): WarpInView {
  const map = mapOf(camera, photo, mirrored);
  const { openingHeight, base, pitch } = expected;
  const inside = (place: number, y: number): boolean =>
    [-ASIDE, ASIDE].every((aside) => {
      const { x: px, y: py } = map(notchX(expected, expected.firstNotch + place) + aside * pitch, y);
      return px >= 1 && py >= 1 && px <= photo.width - 3 && py <= photo.height - 3;
    });
  const topOf = (place: number): number | null => {
    for (let below = BELOW_BAR; below <= FARTHEST; below += 0.5) {
      if (inside(place, openingHeight - below)) return openingHeight - below;
    }
    return null;
  };
  return { topOf, whole: (place) => topOf(place) !== null && inside(place, base - BELOW_BASE) };
}
