import type { ClothFrame } from './clothFrame.ts';
import type { EndRows } from './fellSearch.ts';
import type { Layers } from './layers.ts';
import { FEATURES, GAP_RIPPLE, RIPPLE } from './rowFeatures.ts';
import { quantile } from './statistics.ts';

/** Ripples must go on for so many passes, and so many mm, above a stop before it is doubted. */
const PASSES = 4;
const LEAST_MM = 5;
/** Share of those rows that ripple more as cloth does than as bare string. */
const MOSTLY = 0.85;
/** Cloth's ripples must be so far above those of the bare string before they tell anything, in noise units. */
const APART = 12;
/** What lies above the stop is learnt over this height, mm; what lies below it too. */
const LEARN = 10;
/** Of so many ends on either side a few must stop where the ripples do, to within so many passes. */
const AROUND = 7;
const FEWEST = 3;
const ALIKE = 2.5;

/**
 * Moves stops up to where ripples up and down end: a band in another yarn, through which the strings show, may be as
 * unlike the cloth below as the bare strings are, but bare strings don't ripple. Where neighbours stop must bear it out.
 */
export function rippleTops(ends: readonly EndRows[], layers: readonly Layers[], frame: ClothFrame): (number | null)[] {
  const higher = ends.map((end, i) => rippleTop(end, layers[i]!, frame));
  return higher.map((top, i) => {
    if (top === null) return null;
    const { yStep } = ends[i]!.strip;
    const near = (ALIKE * frame.planPass) / yStep;
    const alike = (k: number): boolean => Math.abs((higher[k] ?? layers[k]!.clothTop) - top) <= near;
    const sides = [-1, 1].map((step) => Array.from({ length: AROUND }, (_, k) => i + step * (k + 1)));
    // On either side; an outermost end has but one.
    const borneOut = sides.every((side) => {
      const there = side.filter((k) => k >= 0 && k < ends.length);
      return there.filter(alike).length >= Math.min(FEWEST, there.length);
    });
    return borneOut ? top : null;
  });
}

/** The row at which one end's ripples end; null where they end at its stop, or can't be told from the bare string's. */
function rippleTop({ strip, views, bareFrom }: EndRows, { clothTop }: Layers, frame: ClothFrame): number | null {
  const pass = frame.planPass / strip.yStep;
  const learn = Math.round(LEARN / strip.yStep);
  const base = Math.max(0, Math.round(-strip.yStart / strip.yStep));
  const from = Math.max(base, clothTop - learn);
  const to = Math.round(clothTop - pass);
  if (to - from < learn / 2 || bareFrom + learn > strip.rows) return null;
  const [left, right, string] = views;
  const liveliness = (r: number): number => {
    const gaps = left.values[r * FEATURES + GAP_RIPPLE]! + right.values[r * FEATURES + GAP_RIPPLE]!;
    return string.values[r * FEATURES + RIPPLE]! + gaps / 2;
  };
  const usual = (low: number, high: number): number =>
    quantile(
      Array.from({ length: high - low }, (_, k) => liveliness(low + k)),
      0.5,
    );
  const cloth = usual(from, to);
  const bare = usual(bareFrom, strip.rows);
  if (cloth - bare < APART) return null;
  let rippling = 0;
  let top = clothTop;
  for (let r = clothTop; r < bareFrom; r++) {
    if (liveliness(r) > (cloth + bare) / 2) rippling++;
    if (rippling < MOSTLY * (r + 1 - clothTop)) break;
    top = r;
  }
  // A row is described with those a pass either side.
  const higher = top - pass;
  return higher - clothTop < Math.max(PASSES * pass, LEAST_MM / strip.yStep) ? null : Math.round(higher);
}
