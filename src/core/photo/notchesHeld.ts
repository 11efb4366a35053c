import { notchX } from './coarseCamera.ts';
import { countEnds, countEndsBelow, OUTSIDE_PICTURE, type PlaceSeen, type StringLook } from './countEnds.ts';
import { coveredNotches, OVER_NOTCH } from './coveredNotches.ts';
import { mapOf } from './firstLook.ts';
import type { View } from './locateOptions.ts';
import type { WarpInView } from './warpInView.ts';

/** Which notches hold a string. */
export interface NotchesHeld {
  readonly places: readonly PlaceSeen[];
  /** Places that hold one by what is seen near the bottom bar, where the top bar leaves some open. */
  readonly below: ReadonlySet<number>;
  /** Whether all of it was told at the bottom bar, because something lies over the strings at the top one. */
  readonly atBottom: boolean;
}

/** Below the cloth so large a share of the strings must be seen before the others' absence there says anything. */
const SEEN_BELOW = 0.8;
/** With a larger share of the plan's strings missing, or with any outside the plan, one bar contradicts the plan. */
const MISSING = 0.12;

/**
 * Tells at the top bar which notches hold a string, and at the bottom bar where something lies over the top one: over a
 * few notches, or, as a stick put through the strings does, over all, so that what is seen there contradicts the plan
 * and the bottom bar bears it out.
 */
export function notchesHeld(look: StringLook, view: View, inView: WarpInView | null): NotchesHeld {
  const { photo, camera, slopes } = look;
  const { expected, mirrored } = view;
  const { ends } = expected;
  const counts = countEnds(look, view, inView);
  const toPhoto = mapOf(camera, view.photo, mirrored);
  const places = coveredNotches(photo, counts, (place, depth) => {
    const slope = slopes(Math.round(Math.min(ends - 1, Math.max(0, place))));
    return toPhoto(notchX(expected, expected.firstNotch + place) - slope * depth, expected.openingHeight - depth);
  });
  const open = places.some(({ why }) => why === OVER_NOTCH);
  const against = contradicts(places, ends);
  if (!open && !against) return { places, below: new Set(), atBottom: false };
  const beyond = places.filter((one) => one.present && !inPlan(one, ends)).map(({ place }) => place);
  const atBottom = countEndsBelow(look, view, new Set(beyond));
  if (against && atBottom.length > 0 && !contradicts(atBottom, ends)) {
    return { places: atBottom, below: new Set(), atBottom: true };
  }
  const strung = new Set(atBottom.filter((one) => one.present).map(({ place }) => place));
  const above = places.filter((one) => one.present && inPlan(one, ends));
  const both = above.filter(({ place }) => strung.has(place));
  return { places, below: both.length >= SEEN_BELOW * above.length ? strung : new Set(), atBottom: false };
}

const inPlan = ({ place }: PlaceSeen, ends: number): boolean => place >= 0 && place < ends;

function contradicts(places: readonly PlaceSeen[], ends: number): boolean {
  const empty = places.filter((one) => inPlan(one, ends) && !one.present && one.why !== OUTSIDE_PICTURE);
  const lacking = empty.filter(({ why }) => why !== OVER_NOTCH);
  return lacking.length > Math.max(2, MISSING * ends) || places.some((one) => one.present && !inPlan(one, ends));
}
