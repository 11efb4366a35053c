import { believedStrings } from './believedStrings.ts';
import { cameraToVector } from './camera.ts';
import type { View } from './locateOptions.ts';
import { type FollowedEnd, followSettings, measureStrings } from './measureStrings.ts';
import { type PoseFit, poseOf } from './poseFit.ts';
import { OWN_NOTCH, outerNotches, unsureAt } from './poseUnsure.ts';
import { scaleOf } from './refinePose.ts';
import type { WarpInView } from './warpInView.ts';

/** Fewest strings that bear each other out. */
const FEWEST = 4;

/** Strings followed where a pose has them, and which of them surely stand in their own notches. */
export interface OwnStrings {
  readonly ends: readonly FollowedEnd[];
  readonly upper: ReadonlySet<number>;
  readonly lower: ReadonlySet<number>;
}

/** Follows the strings where a pose from other things has them; none is believed where that pose can't tell notches apart. */
export function ownStrings(view: View, fit: PoseFit, inView?: WarpInView): OwnStrings {
  const { photo, expected, mirrored } = view;
  const scale = scaleOf(fit.camera, photo, mirrored, expected);
  const ends = measureStrings(photo, fit.camera, photo, mirrored, expected, followSettings(expected, scale), inView);
  const pose = poseOf(cameraToVector(fit.camera), photo, mirrored);
  const [left, right] = outerNotches(expected);
  const believed = (part: 'upper' | 'lower', bar: number): ReadonlySet<number> => {
    const unsure = unsureAt(view, fit, [
      [left, bar],
      [right, bar],
    ]).x;
    if (unsure > OWN_NOTCH * expected.pitch) return new Set();
    const most = Math.min(0.4 * expected.pitch, 0.3 + 3 * unsure);
    const strings = believedStrings(pose, ends, { part, bar, mostShift: most, mostStretch: most }, scale);
    return strings.size >= FEWEST ? strings : new Set();
  };
  return { ends, upper: believed('upper', expected.openingHeight), lower: believed('lower', 0) };
}
