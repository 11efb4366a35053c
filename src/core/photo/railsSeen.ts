import { edgeProfile, supportAt } from './edgeProfile.ts';
import type { Expected } from './expected.ts';
import type { ColourRaster } from './reduce.ts';

const STEP = 0.25;
/** How far a first camera may be out across the loom, mm. */
const ASIDE = 8;
/** Rails are between these shares of a bar wide, and not so slender that their two edges are one, mm. */
const NARROWEST = 0.4;
const WIDEST = 1.8;
const LEAST = 6;
/** What differs less from a bar's breadth is one, mm. */
const AS_PLANNED = 1.5;
/** Both outer edges must be seen on so much of their length, where a bar's breadth away they aren't, and by so much. */
const SEEN = 0.5;
const BETTER = 0.35;
/** From the opening outward, share of a bar: there is wood however narrow the rails. */
const ON_WOOD = 0.25;

/** Rails of another breadth than the bars. */
export interface RailsSeen {
  /** mm. */
  readonly breadth: number;
  /** How far right of where the camera has them both rails are seen, mm. */
  readonly aside: number;
}

/**
 * Plans know how high a loom's bars are; its sides are often narrower. Their breadth is what puts both outer edges
 * equally far from two inner ones that are an opening apart.
 * @param toSmall loom mm (z above the strings' plane) to pixels of `picture`.
 * @returns null where rails as broad as the bars are seen as well, or no others.
 */
export function railsSeen(
  picture: ColourRaster,
  toSmall: (x: number, y: number, z?: number) => { x: number; y: number },
  expected: Expected,
): RailsSeen | null {
  const { openingHeight, openingWidth, bar } = expected;
  const rows: number[] = [];
  for (let y = 0.06 * openingHeight; y <= 0.94 * openingHeight; y += 3) rows.push(y);
  const face = -expected.stringDiameter / 2;
  const profile = (sign: -1 | 1) =>
    edgeProfile(
      picture,
      (out, y) => toSmall(sign * (openingWidth / 2 + out), y, face),
      -ASIDE - 2,
      WIDEST * bar + ASIDE + 2,
      STEP,
      rows,
      () => true,
      ON_WOOD * bar,
    );
  const left = profile(-1);
  const right = profile(1);
  const both = (outLeft: number, outRight: number): number =>
    Math.sqrt(supportAt(left, outLeft) * supportAt(right, outRight));
  let planned = { outer: 0, sum: 0 };
  let best = { breadth: bar, aside: 0, outer: 0, sum: 0 };
  for (let aside = -ASIDE; aside <= ASIDE; aside += STEP) {
    const inner = both(-aside, aside);
    for (let breadth = Math.max(LEAST, NARROWEST * bar); breadth <= WIDEST * bar; breadth += STEP) {
      const outer = both(breadth - aside, breadth + aside);
      const sum = inner + outer;
      if (Math.abs(breadth - bar) < AS_PLANNED && sum > planned.sum) planned = { outer, sum };
      if (sum > best.sum) best = { breadth, aside, outer, sum };
    }
  }
  if (planned.outer >= SEEN || best.outer < SEEN || best.sum < planned.sum + BETTER) return null;
  return { breadth: best.breadth, aside: best.aside };
}
