import { asPlanned } from './asPlanned.ts';
import { openingDiffers } from './doubtedPlan.ts';
import type { Expected } from './expected.ts';
import { mapOf } from './firstLook.ts';
import { type FrameLook, type FramePicture, looksOfAnySize, looksOneSideOff } from './frameLooks.ts';
import type { LocateOptions, View } from './locateOptions.ts';
import type { LocatedLoom } from './loomPose.ts';
import { refinedLook } from './refinedLook.ts';
import { FRAME_CLEAR, FRAME_SEEN } from './refineOnNotches.ts';
import type { Sought } from './refusal.ts';
import { seenPitches } from './seenPitches.ts';
import type { StringBands } from './stringBands.ts';
import { stringPitch } from './stringPitch.ts';

/** Frames of another opening that are refined, and how far behind the best look's score they may lie. */
const MOST = 2;
const BEHIND = 1.5;
/** Of any size there are more frames by chance than of the planned one: they must be clearer. */
const CLEAR_LOOK = 9.5;
/** How string-like the ends' places must be, or the places between. */
const STRINGS_CLEAR = 0.9;
/** So large a share of the strings in the notches of a bar is nearly all. */
const NEARLY_ALL = 0.85;

/**
 * Where no loom as planned is found, or hardly, looks for one like it but for its opening, with all that a measured loom has to
 * show: a frame of any size about strings of the planned pitch, or where these aren't told from other lines, one that is
 * as wide as planned or as high.
 * @param clearly only one whose frame is clear, whatever its strings say for it.
 * @returns what is said of the plan then; null where no such loom is seen either.
 */
export function otherOpening(
  view: View,
  seen: FramePicture,
  bands: StringBands,
  options: LocateOptions,
  clearly: boolean,
): Sought<LocatedLoom> | null {
  const { expected } = view;
  options.trace?.('another opening?');
  const scales = seenPitches(bands, seen.factor);
  if (scales.length === 0) return null;
  const sized = scales
    .flatMap((scale) => looksOfAnySize(seen, expected, scale, MOST))
    .map((look) => onNotches(look, view));
  const found = likeAPlan(sized, view, options, clearly);
  if (found) return openingDiffers(expected, found);
  const other = likeAPlan(looksOneSideOff(seen, expected, scales, MOST), view, options, clearly);
  return other && openingDiffers(expected, other);
}

/** The plan with the opening of the first look that refined shows a loom beyond doubt. */
function likeAPlan(looks: readonly FrameLook[], view: View, options: LocateOptions, clearly: boolean): Expected | null {
  const ordered = looks
    .filter((look) => Math.max(look.strings, look.between) > STRINGS_CLEAR)
    .sort((a, b) => b.score - a.score);
  for (const look of ordered.slice(0, MOST)) {
    const { openingWidth, openingHeight } = look.expected;
    options.trace?.(
      `opening ${openingWidth.toFixed(0)} × ${openingHeight.toFixed(0)}: ${look.score.toFixed(2)} edges ${look.edges.toFixed(2)} wood ${look.wood.toFixed(2)} strings ${look.strings.toFixed(2)}/${look.between.toFixed(2)}`,
    );
    if (look.score < Math.max(CLEAR_LOOK, ordered[0]!.score - BEHIND)) break;
    const { camera, expected } = look;
    const own = { ...view, expected };
    const refined = refinedLook(own, { camera, fromFrame: true }, options);
    const found = asPlanned(own, refined, options);
    const support = refined.frameSupport;
    options.trace?.(
      `frame ${support.toFixed(2)}: ${found.ok ? 'a loom' : `${found.problem.code} ${found.problem.message.mm} ${found.problem.detail ?? ''}`}`,
    );
    // An opening told to a hundredth bends the wood's edges a little; strings in the notches then make up for it.
    const strung = !clearly && Math.max(refined.upperShare, refined.lowerShare) > NEARLY_ALL;
    if (found.ok && support > (strung ? FRAME_SEEN : FRAME_CLEAR)) return expected;
  }
  return null;
}

/** A look scaled so that its strings stand as far apart near the top bar as planned: cloth below draws them together. */
function onNotches(look: FrameLook, { photo, mirrored, expected }: View): FrameLook {
  const pitch = stringPitch(photo, mapOf(look.camera, photo, mirrored), look.expected);
  const by = pitch === null ? 1 : expected.pitch / pitch;
  const { openingWidth, openingHeight } = look.expected;
  const { aimX, aimY, logDistance } = look.camera;
  return {
    ...look,
    expected: { ...look.expected, openingWidth: by * openingWidth, openingHeight: by * openingHeight },
    camera: { ...look.camera, aimX: by * aimX, aimY: by * aimY, logDistance: logDistance + Math.log(by) },
  };
}
