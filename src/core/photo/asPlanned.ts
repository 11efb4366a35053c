import { inBothUnits } from '../model/bothUnits.ts';
import type { ReasonCode } from '../model/check.ts';
import { lengthInWords } from '../model/lengthWords.ts';
import { openingOrPitch, pitchDiffers } from './doubtedPlan.ts';
import type { Expected } from './expected.ts';
import { finishedLoom, seenFrame } from './finishedLoom.ts';
import { mapOf } from './firstLook.ts';
import type { LocateOptions, View } from './locateOptions.ts';
import type { LocatedLoom } from './loomPose.ts';
import { oddSide } from './oddSide.ts';
import type { Photo } from './raster.ts';
import type { ColourRaster } from './reduce.ts';
import { BASE_STEPS, reducedMap } from './refinedLook.ts';
import { FRAME_CLEAR, FRAME_SEEN } from './refineOnNotches.ts';
import type { RefinedPose } from './refinePose.ts';
import { lookAt, type Refusal, refusal, type Sought } from './refusal.ts';
import { stringPitch } from './stringPitch.ts';
import { stringsSure } from './stringsSure.ts';
import { baseEvidence, evidenceElsewhere } from './uprightness.ts';

/** The same where strings stand in nearly all notches of both bars. */
const FRAME_GLIMPSED = 0.45;

export const AGAIN =
  'Take the picture again from straight above, the whole frame in view, or click the four inner corners.';

/** A refined look as a located loom, if its frame is really there and nothing in the picture contradicts the plan. */
export function asPlanned(view: View, refined: RefinedPose, options: LocateOptions): Sought<LocatedLoom> {
  const { photo, picture, expected, mirrored } = view;
  const support = refined.frameSupport;
  const toSmall = reducedMap(refined.fit.camera, view);
  const sure = stringsSure(refined);
  const strings = refined.upperUsed || refined.lowerUsed;
  const doubtful = (why: string) => refusal('no-loom', NO_FRAME, AGAIN, why);
  if (support < (sure ? FRAME_GLIMPSED : strings ? FRAME_SEEN : FRAME_CLEAR)) {
    return doubtful(`frame ${support.toFixed(2)}`);
  }
  if (support < FRAME_CLEAR && !sure && baseAstray(picture, toSmall, expected)) {
    return doubtful('the cloth begins elsewhere');
  }
  if (!strings && !barsEnd(refined)) return doubtful('no bar ends, and no string stands in a notch');
  if (!sure && loneOuterEdge(refined)) return doubtful('one bar is seen by its outer edge alone');
  const against = sure ? null : disagreement(photo, expected, refined, mirrored);
  if (against) return against;
  if (oddSide(picture, toSmall, expected) !== null) return doubtful('table where wood should be');
  const finished = finishedLoom(view, refined, { ...seenFrame(refined), taken: [] }, options);
  return finished.ok || sure
    ? finished
    : (halfThePitch(photo, expected, refined, mirrored, finished.problem) ?? finished);
}

/** Reasons that notches twice as close as they are would give. */
const MISCOUNTED: ReadonlySet<ReasonCode> = new Set(['wrong-count', 'no-strings']);

/** Whether strings that aren't as many as planned stand about two planned notches apart. */
function halfThePitch(
  photo: Photo,
  expected: Expected,
  { fit, frameSupport }: RefinedPose,
  mirrored: boolean,
  { code }: Refusal,
): Sought<never> | null {
  if (!MISCOUNTED.has(code) || frameSupport < FRAME_CLEAR) return null;
  const wide = { ...expected, pitch: 2 * expected.pitch };
  const pitch = stringPitch(photo, mapOf(fit.camera, photo, mirrored), wide);
  if (pitch === null || pitch < WIDER * expected.pitch) return null;
  return frameSupport < FRAME_SURE ? openingOrPitch(expected, expected.pitch / pitch) : pitchDiffers(expected, pitch);
}

/** How many notches apart strings must stand at least for more than a count to be wrong. */
const WIDER = 1.4;

/** Least share of a bar's inner edge for the bar to end there. */
const BAR_ENDS = 0.3;

/** Whether wood ends at a bar's inner edge: a door with slats has the outline of a loom, but is wood all over. */
function barsEnd({ frame }: RefinedPose): boolean {
  return frame.edges.some(
    ({ side, kind, support }) => kind === 'inner' && (side === 'bottom' || side === 'top') && support >= BAR_ENDS,
  );
}

/** With less than this share of its inner edge and of its strings seen, a bar is known by its outer edge alone. */
const INNER_SEEN = 0.12;
const STRINGS_SEEN = 0.6;

/** Whether one bar has no more than its outer edge, which on a dark table may be where its shadow ends. */
function loneOuterEdge({ frame, upperShare, lowerShare }: RefinedPose): boolean {
  const lone = (bar: 'bottom' | 'top', share: number): boolean =>
    share < STRINGS_SEEN &&
    frame.edges.some(({ side, kind, support }) => side === bar && kind === 'inner' && support < INNER_SEEN);
  return lone('bottom', lowerShare) || lone('top', upperShare);
}

/** Whether the cloth plainly begins elsewhere than a look has it: then the look took other lines for the frame. */
function baseAstray(picture: ColourRaster, toSmall: ReturnType<typeof reducedMap>, expected: Expected): boolean {
  return evidenceElsewhere(picture, toSmall, expected) > 3 * baseEvidence(picture, toSmall, expected) + BASE_STEPS;
}

/** Least share of one side, by its inner or its outer edge, for that side to stand where the plan has it. */
const SIDE_SEEN = 0.4;
/** Share of the frame's edges from which on the frame is surer than the plan. */
const FRAME_SURE = 0.95;
const NO_FRAME = 'Strings may be there, but no frame of the size in the plan is seen around them.';
/** Shares of a pitch by which strings may seem nearer or wider than planned before the plan is doubted. */
const PITCH_OFF = 0.03;

/** What of the frame and the strings contradicts the plan, in words; null when nothing does. */
function disagreement(
  photo: Photo,
  expected: Expected,
  refined: RefinedPose,
  mirrored: boolean,
): Sought<LocatedLoom> | null {
  const map = mapOf(refined.fit.camera, photo, mirrored);
  for (const side of ['bottom', 'top', 'left', 'right'] as const) {
    const seen = Math.max(...refined.frame.edges.flatMap((edge) => (edge.side === side ? [edge.support] : [])));
    if (seen >= SIDE_SEEN) continue;
    const bar = side === 'bottom' || side === 'top';
    const notThere = refusal(
      'references-disagree',
      inBothUnits((units) => {
        const [width, height] = [expected.openingWidth, expected.openingHeight].map((one) => lengthInWords(one, units));
        return `The ${side} ${bar ? 'bar' : 'rail'} is not where an opening of ${width} × ${height} has it.`;
      }),
      "Measure the opening's width and height again and correct them in the plan, or take the picture with the whole frame in view.",
    );
    return lookAt(bar ? 'openingHeight' : 'openingWidth', notThere);
  }
  if (refined.upperShare > 0.7) return null;
  const pitch = stringPitch(photo, map, expected);
  const off = pitch === null ? 0 : Math.abs(pitch / expected.pitch - 1);
  if (pitch === null || off < PITCH_OFF) return null;
  // A frame not seen all round may itself be a little out; then it is the look that is doubted, not the plan.
  if (off < 2 * PITCH_OFF || refined.frameSupport < FRAME_CLEAR) {
    return refusal('no-loom', NO_FRAME, AGAIN, `strings ${pitch.toFixed(2)} mm apart`);
  }
  if (refined.frameSupport < FRAME_SURE) return openingOrPitch(expected, expected.pitch / pitch);
  return pitchDiffers(expected, pitch);
}
