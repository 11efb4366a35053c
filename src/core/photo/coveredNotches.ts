import { DEPTHS, type PlaceSeen } from './countEnds.ts';
import type { Photo } from './raster.ts';
import { median } from './statistics.ts';

/** Said of an end where what lies over its notch hides whether there is a string. */
export const OVER_NOTCH = 'something lies over its notch';

/** A finger's breadth: what lies over one notch alone is not told from a gap with a stripe of the table in it. */
const FEWEST = 2;
/** What lies there must be so unlike everything seen in the gaps: so many times as the gaps are among themselves. */
const UNLIKE = 3;
/** And at least by so much, of 255. */
const LEAST = 18;
/** At so many of the heights that are looked at. */
const SHARE = 0.7;
/** Half the breadth that is looked at in a gap, and in the place of a string, in pitches. */
const IN_GAP = 0.15;
const IN_PLACE = 0.4;

type Colour = readonly [number, number, number];

/**
 * Tells places at which no string is seen because something lies over them from places that are empty: an empty one
 * shows what the gaps between the other strings show.
 * @param place where the photograph shows a notch place (which may be a broken number), so deep below the top bar, px.
 */
export function coveredNotches(
  photo: Photo,
  seen: readonly PlaceSeen[],
  place: (notch: number, depth: number) => { readonly x: number; readonly y: number },
): PlaceSeen[] {
  const present = new Set(seen.filter((one) => one.present).map((one) => one.place));
  const gaps = [...present].filter((at) => present.has(at + 1));
  if (gaps.length < FEWEST * 2) return [...seen];
  const inGaps = DEPTHS.map((depth) =>
    gaps.map((at) => middleColour(photo, (share) => place(at + 0.5 + share * IN_GAP, depth))),
  );
  const among = inGaps.map((colours) =>
    median(colours.map((one, i) => nearest(one, [...colours.slice(0, i), ...colours.slice(i + 1)]))),
  );
  const unlike = (at: number): boolean => {
    const apart = DEPTHS.filter((depth, k) => {
      const colour = middleColour(photo, (share) => place(at + share * IN_PLACE, depth));
      return nearest(colour, inGaps[k]!) > Math.max(LEAST, UNLIKE * among[k]!);
    });
    return apart.length >= SHARE * DEPTHS.length;
  };
  const strange = new Set(seen.filter((one) => !one.present && unlike(one.place)).map((one) => one.place));
  const covered = (at: number): boolean => {
    let run = 1;
    for (let k = at - 1; strange.has(k); k--) run++;
    for (let k = at + 1; strange.has(k); k++) run++;
    return strange.has(at) && run >= FEWEST;
  };
  // Beside what lies there its edge may lie over a string.
  const nearIt = ({ place, present }: PlaceSeen): boolean => !present && (covered(place - 1) || covered(place + 1));
  return seen.map((one) => (covered(one.place) || nearIt(one) ? { ...one, why: OVER_NOTCH } : one));
}

const nearest = (one: Colour, others: readonly Colour[]): number =>
  Math.min(...others.map((other) => Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2])));

/** The middle colour along a short stretch. @param at where a share from -1 to 1 of it lies, px. */
function middleColour(photo: Photo, at: (share: number) => { readonly x: number; readonly y: number }): Colour {
  const colours = [-1, -0.75, -0.5, -0.25, 0, 0.25, 0.5, 0.75, 1].map((share) => {
    const { x, y } = at(share);
    const column = Math.max(0, Math.min(photo.width - 1, Math.round(x)));
    const row = Math.max(0, Math.min(photo.height - 1, Math.round(y)));
    return (row * photo.width + column) * 3;
  });
  const channel = (c: number) => median(colours.map((from) => photo.rgb[from + c]!));
  return [channel(0), channel(1), channel(2)];
}
