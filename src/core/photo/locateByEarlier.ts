import { believedStrings } from './believedStrings.ts';
import { cameraToVector } from './camera.ts';
import { usualWood } from './coarseCamera.ts';
import type { EarlierReference } from './earlierReference.ts';
import { finishedLoom } from './finishedLoom.ts';
import { stringThings } from './knownThings.ts';
import type { LocateOptions, View } from './locateOptions.ts';
import type { LocatedLoom } from './loomPose.ts';
import { followSettings, measureStrings } from './measureStrings.ts';
import { fitPose, poseOf } from './poseFit.ts';
import { clothCorners, MOST_UNSURE, OWN_NOTCH, outerNotches, unsureAt } from './poseUnsure.ts';
import { scaleOf } from './refinePose.ts';
import { refusal, type Sought } from './refusal.ts';
import { warpInView } from './warpInView.ts';

const ROUNDS = 3;
const again = 'Take the picture again from straight above, the whole frame in view, or click the four inner corners.';

/**
 * Places a picture by an earlier check of the same piece where its own frame doesn't: the loom may be cut off. What is
 * seen of the strings then says the rest, each at the notch where the earlier check has it.
 */
export function locateByEarlier(view: View, earlier: EarlierReference, options: LocateOptions): Sought<LocatedLoom> {
  const { photo, expected, prior, mirrored } = view;
  const taken = [earlier.evidence];
  let fit = fitPose([], earlier.camera, usualWood, prior, photo, mirrored, taken);
  const [left, right] = outerNotches(expected);
  for (let round = 0; ; round++) {
    const scale = scaleOf(fit.camera, photo, mirrored, expected);
    const inView = warpInView(fit.camera, photo, mirrored, expected);
    const ends = measureStrings(photo, fit.camera, photo, mirrored, expected, followSettings(expected, scale), inView);
    const pose = poseOf(cameraToVector(fit.camera), photo, mirrored);
    const believed = (part: 'upper' | 'lower', bar: number): ReadonlySet<number> => {
      const unsure = unsureAt(view, fit, [
        [left, bar],
        [right, bar],
      ]).x;
      if (unsure > OWN_NOTCH * expected.pitch) return new Set();
      const most = Math.min(0.4 * expected.pitch, 0.3 + 3 * unsure);
      const strings = believedStrings(pose, ends, { part, bar, mostShift: most, mostStretch: most }, scale);
      return strings.size >= 4 ? strings : new Set();
    };
    const upper = believed('upper', expected.openingHeight);
    const lower = believed('lower', 0);
    const unsure = unsureAt(view, fit, clothCorners(expected));
    options.trace?.(
      `by the earlier check: upper ${upper.size} lower ${lower.size}, unsure by ${unsure.x.toFixed(2)}, ${unsure.y.toFixed(2)} mm`,
    );
    if (upper.size === 0) {
      return refusal('no-strings', 'The strings aren’t seen where the earlier check has them.', again);
    }
    const things = stringThings(ends, expected, lower, upper);
    fit = fitPose(things, fit.camera, fit.wood, prior, photo, mirrored, taken);
    if (round < ROUNDS - 1) continue;
    const sure = unsureAt(view, fit, clothCorners(expected));
    if (Math.max(sure.x, sure.y) > MOST_UNSURE) {
      return refusal('no-loom', 'The earlier check doesn’t place this picture well enough.', again);
    }
    const followed = { ends, upperUsed: true, lowerUsed: lower.size > 0, stringsIn: photo };
    const shown = { fit, things, taken, witnesses: 1, wood: false };
    return finishedLoom(view, followed, shown, options, { when: earlier.when, inView });
  }
}
