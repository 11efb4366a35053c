import type { RowRuns } from './rowRuns.ts';
import type { Links } from './stretches.ts';

/** Passes over which the same areas lie side by side, and how each goes on from the stretch below; null at the foot. */
export interface Stretch {
  readonly foot: number;
  /** The first row above it. */
  readonly head: number;
  readonly links: Links | null;
}

/** A boundary that moves by more ends than this in one pass is better met on that pass. */
const LEVEL_FROM = 1;

/** Which boundary of the stretch below goes on as each of these; -1 when it is new. */
export function boundariesBelow(links: Links | null, count: number): Int32Array {
  const from = new Int32Array(Math.max(0, count - 1)).fill(-1);
  if (links === null) return from;
  for (let at = 0; at + 1 < count; at++) {
    const under = links.last[at]!;
    if (under >= 0 && links.first[at + 1] === under + 1) from[at] = under;
  }
  return from;
}

/**
 * How much better each area of each stretch keeps the level edges above if its weft travels right on even passes (bit 0)
 * than on odd ones, in cells: an edge steps only on every second pass, so a level edge is met on its own pass or one late.
 * What lies above counts too, as far up as the area goes on.
 */
export function levelPreferences(runs: RowRuns, stretches: readonly Stretch[]): readonly Float64Array[] {
  const preferences = stretches.map(({ foot }) => new Float64Array(runs.offset[foot + 1]! - runs.offset[foot]!));
  for (let index = stretches.length - 1; index >= 0; index--) {
    const { foot, head, links } = stretches[index]!;
    const own = preferences[index]!;
    const from = boundariesBelow(links, own.length);
    for (let at = 0; at + 1 < own.length; at++) {
      let below = from[at]! >= 0 ? runs.start[runs.offset[foot - 1]! + from[at]! + 1]! : -1;
      for (let row = foot; row < head; row++) {
        const place = runs.start[runs.offset[row]! + at + 1]!;
        const run = below < 0 ? 0 : Math.abs(place - below);
        below = place;
        if (run <= LEVEL_FROM) continue;
        // The left of the two steps here if it travels right on the pass below, the right one if it travels left.
        const gain = (row & 1) === 0 ? run / 2 : -run / 2;
        own[at]! += gain;
        own[at + 1]! -= gain;
      }
    }
    if (links === null || index === 0) continue;
    const under = preferences[index - 1]!;
    for (let at = 0; at < own.length; at++) if (links.first[at]! >= 0) under[links.first[at]!]! += own[at]!;
  }
  return preferences;
}
