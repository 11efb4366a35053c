import { usualWood } from './coarseCamera.ts';
import type { EarlierReference } from './earlierReference.ts';
import { finishedLoom } from './finishedLoom.ts';
import { stringThings } from './knownThings.ts';
import type { LocateOptions, View } from './locateOptions.ts';
import type { LocatedLoom } from './loomPose.ts';
import { ownStrings } from './ownStrings.ts';
import { fitPose } from './poseFit.ts';
import { clothCorners, MOST_UNSURE, unsureAt } from './poseUnsure.ts';
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
  for (let round = 0; ; round++) {
    const inView = warpInView(fit.camera, photo, mirrored, expected);
    const { ends, upper, lower } = ownStrings(view, fit, inView);
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
