import { type Metres, type Mm, metres } from '../model/units.ts';

/** What one wound warp is made of, mm. */
export interface WarpRun {
  readonly strings: number;
  /** From notch to notch, once up the loom. */
  readonly run: Mm;
  /** Round the wood from one string to the next. */
  readonly crossing: Mm;
  /** Left over for both knots together. */
  readonly knots: Mm;
}

/** Length to cut: every string's run, a crossing between each two, and the knots. */
export function warpLength({ strings, run, crossing, knots }: WarpRun): Metres {
  return metres((strings * run + Math.max(0, strings - 1) * crossing + knots) / 1000);
}
