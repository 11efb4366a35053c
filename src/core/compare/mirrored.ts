import type { EndReading } from '../model/check.ts';

/** The heights of two ends that mirror each other. */
export interface MirroredPair {
  /** Index of the left end of the pair. */
  readonly end: number;
  /** Left less right, mm: positive where the left is higher. */
  readonly differenceMm: number;
  readonly sigmaMm: number;
  /** The same in turns (two passes each). */
  readonly turns: number;
}

export interface Mirrored {
  readonly pairs: readonly MirroredPair[];
  /** Over all pairs; null without any. */
  readonly mean: { readonly differenceMm: number; readonly sigmaMm: number; readonly turns: number } | null;
}

/** Compares every end's fell with that of its mirror image about the warp's middle. */
export function mirroredHeights(ends: readonly EndReading[], endCount: number, passMm: number): Mirrored {
  const byIndex = new Map(ends.map((end) => [end.index, end]));
  const pairs: MirroredPair[] = [];
  for (let end = 0; end < Math.floor(endCount / 2); end++) {
    const left = byIndex.get(end)?.fell;
    const right = byIndex.get(endCount - 1 - end)?.fell;
    if (!left || !right) continue;
    const differenceMm = left.value - right.value;
    pairs.push({
      end,
      differenceMm,
      sigmaMm: Math.hypot(left.sigma, right.sigma),
      turns: Math.round(differenceMm / (2 * passMm)),
    });
  }
  if (pairs.length === 0) return { pairs, mean: null };
  const mean = pairs.reduce((sum, pair) => sum + pair.differenceMm, 0) / pairs.length;
  // Errors of one photograph move together: averaging pairs does not shrink them below their common part.
  const common = Math.min(...pairs.map((pair) => pair.sigmaMm)) * 0.5;
  const own = Math.sqrt(pairs.reduce((sum, pair) => sum + pair.sigmaMm ** 2, 0)) / pairs.length;
  return {
    pairs,
    mean: { differenceMm: mean, sigmaMm: Math.hypot(common, own), turns: Math.round(mean / (2 * passMm)) },
  };
}
