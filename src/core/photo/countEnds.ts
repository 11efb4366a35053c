import type { Camera } from './camera.ts';
import { notchX } from './coarseCamera.ts';
import { mapOf } from './firstLook.ts';
import { type FollowSettings, lookAtString, type StringSample } from './followString.ts';
import type { View } from './locateOptions.ts';
import type { Photo } from './raster.ts';
import { median } from './statistics.ts';
import type { WarpInView } from './warpInView.ts';

/** What stands at one notch place, counted from the plan's first end; below 0 and beyond the last end lie outside it. */
export interface PlaceSeen {
  readonly place: number;
  readonly present: boolean;
  /** Plain words when no string was seen. */
  readonly why: string | null;
}

/** How strings are looked for: in which picture, under which camera, with the slopes of their upper parts. */
export interface StringLook {
  readonly photo: Photo;
  readonly camera: Camera;
  readonly settings: FollowSettings;
  readonly slopes: (end: number) => number;
  /** Notches looked at on either side of the plan's ends. */
  readonly beyond: number;
}

/** Said of an end where the notch itself is seen to be empty. */
export const NO_STRING = 'no string is seen at its notch';
/** Said of an end of which the picture doesn't show enough. */
export const OUTSIDE_PICTURE = 'the picture doesn’t hold all of it';

/** How far inside a bar, mm, every place is looked at; at the bottom bar no farther than the cloth leaves bare. */
export const DEPTHS = [3, 4.5, 6, 7.5, 9, 10.5, 12, 13.5, 15, 16.5, 18, 19.5, 21, 22.5, 24, 25.5, 27, 28.5];

/** So many times as unlike the others' colour as is still the same: the table in an empty notch's place, or a shadow. */
const OTHER = 2;

/** Below the cloth's base so much is left out, mm: twining. And so many looks are the fewest that tell. */
const BELOW_BASE = 6;
const FEWEST_LOOKS = 6;

/**
 * Looks at every notch place, the plan's and a few beyond, for a string near the top bar: a bar of the right breadth
 * that runs straight, in the colour most strings have at that height. Gaps, stripes of the table and shadows fail one
 * of the three.
 * @param inView where the picture begins to show strings, if it needn't hold the whole loom.
 */
export function countEnds(look: StringLook, view: View, inView: Pick<WarpInView, 'topOf'> | null): PlaceSeen[] {
  const { photo, settings, slopes } = look;
  const { expected } = view;
  const { toPhoto, reach, first, last } = lookedAt(look, view);
  const outside: PlaceSeen[] = [];
  const looks: Looks[] = [];
  for (let place = first; place <= last; place++) {
    const x = notchX(expected, expected.firstNotch + place);
    const slope = slopes(Math.min(expected.ends - 1, Math.max(0, place)));
    // Looks begin a little below the bar, or where the picture does.
    const top = inView ? inView.topOf(place) : expected.openingHeight - DEPTHS[0]!;
    if (top === null) {
      outside.push({ place, present: false, why: OUTSIDE_PICTURE });
      continue;
    }
    const lower = Math.max(0, expected.openingHeight - DEPTHS[0]! - top);
    looks.push({
      place,
      samples: DEPTHS.map((depth) => {
        const below = depth + lower;
        return lookAtString(photo, toPhoto, x - slope * below, expected.openingHeight - below, slope, settings, reach);
      }),
    });
  }
  return [...judged(looks, expected.ends, new Set()), ...outside].sort((a, b) => a.place - b.place);
}

/**
 * The same near the bottom bar, below the cloth: what lies over the strings at the top bar needn't reach down there.
 * @param above places outside the plan that hold a string by what is seen at the top bar: here that has to be borne out,
 *   not proven anew.
 * @returns nothing where the cloth leaves too little bare.
 */
export function countEndsBelow(look: StringLook, view: View, above: ReadonlySet<number>): PlaceSeen[] {
  const { photo, settings } = look;
  const { expected } = view;
  const depths = DEPTHS.filter((depth) => depth <= expected.base - BELOW_BASE);
  if (depths.length < FEWEST_LOOKS) return [];
  const { toPhoto, reach, first, last } = lookedAt(look, view);
  const looks = Array.from({ length: last - first + 1 }, (_, k): Looks => {
    const x = notchX(expected, expected.firstNotch + first + k);
    const samples = depths.map((depth) => lookAtString(photo, toPhoto, x, depth, 0, settings, reach));
    return { place: first + k, samples };
  });
  return judged(looks, expected.ends, above);
}

/** Which places are looked at, and how far beside each. */
function lookedAt({ camera, settings, beyond }: StringLook, { photo, mirrored, expected }: View) {
  return {
    toPhoto: mapOf(camera, photo, mirrored),
    reach: Math.min(0.3 * expected.pitch, settings.halfEnd + settings.blur),
    first: Math.max(-expected.firstNotch, -beyond),
    last: Math.min(expected.notches - 1 - expected.firstNotch, expected.ends - 1 + beyond),
  };
}

/** Looks at one place, the same heights for every place. */
interface Looks {
  readonly place: number;
  readonly samples: readonly (StringSample | null)[];
}

/** Outside the plan a string must show itself so much more clearly. */
const STRICT = 0.7;

/**
 * Tells strings from what else is met at the places.
 * @param ends of the plan. @param likely places outside the plan at which a string is expected all the same.
 */
function judged(looks: readonly Looks[], ends: number, likely: ReadonlySet<number>): PlaceSeen[] {
  const heights = Array.from({ length: looks[0]?.samples.length ?? 0 }, (_, k) => k);
  // The usual colour of a string and the usual contrast at each height: most places hold a string.
  const usual = heights.map((k) => {
    const seen = looks.flatMap(({ place, samples }) => (place >= 0 && place < ends && samples[k] ? [samples[k]!] : []));
    return {
      core: [0, 1, 2].map((c) => median(seen.map((sample) => sample.profile.core[c]!))),
      contrast: median(seen.map((sample) => sample.profile.contrast)),
    };
  });
  const measures = looks.map(({ place, samples }) => {
    const apart: number[] = [];
    const contrast: number[] = [];
    const offs: number[] = [];
    samples.forEach((sample, k) => {
      if (!sample) return;
      apart.push(Math.hypot(...sample.profile.core.map((value, c) => value - usual[k]!.core[c]!)));
      contrast.push(sample.profile.contrast / Math.max(1, usual[k]!.contrast));
      offs.push(sample.profile.centre);
    });
    const middle = median(offs);
    return {
      place,
      share: offs.length / heights.length,
      apart: median(apart),
      contrast: median(contrast),
      wander: median(offs.map((off) => Math.abs(off - middle))),
    };
  });
  const inPlan = measures.filter(({ place, share }) => place >= 0 && place < ends && share > 0);
  const usualApart = median(inPlan.map((one) => one.apart));
  const usualWander = median(inPlan.map((one) => one.wander));
  return measures.map((one): PlaceSeen => {
    const strict = (one.place < 0 || one.place >= ends) && !likely.has(one.place) ? STRICT : 1;
    const seen = one.share > 0.55 / strict;
    const unlike = one.apart / Math.max(14, 4 * usualApart);
    const sameColour = unlike < strict;
    const straight = one.wander < strict * Math.max(0.1, 5 * usualWander);
    const clear = one.contrast > 0.3 / strict;
    // Hard light or a stripe behind a string may spoil one of the three, though no light makes it another thing
    // altogether; outside the plan all must hold.
    const agree = [sameColour, straight, clear].filter((value) => value).length;
    const present = seen && unlike < OTHER && agree >= (strict < 1 ? 3 : 2);
    return { place: one.place, present, why: present ? null : NO_STRING };
  });
}
