import { connectedSpots } from './spots.ts';
import type { YarnRaster } from './yarnRaster.ts';

/** Rounds of merging; specks inside specks go one layer a round. */
const mostRounds = 12;

/**
 * Gives every connected spot smaller than `smallest` pixels the yarn it shares most of its edge with, and looks again
 * until no speck is left. A picture of specks only stays as it is.
 */
export function mergeSpecks(raster: YarnRaster, smallest: number): YarnRaster {
  const { width, height } = raster;
  const yarns = Uint8Array.from(raster.yarns);
  for (let round = 0; round < mostRounds; round++) {
    const { of, sizes } = connectedSpots(yarns, width, height);
    const small = sizes.map((size) => size < smallest);
    if (!small.includes(true) || !small.includes(false)) break;
    // Shared edge of every speck with each yarn round it; larger neighbours first, so a speck goes to real cloth.
    const shares = new Map<number, Map<number, number>>();
    const meet = (pixel: number, next: number) => {
      const [one, other] = [of[pixel]!, of[next]!];
      if (one === other) return;
      for (const [speck, beside] of [
        [one, other],
        [other, one],
      ] as const) {
        if (!small[speck]) continue;
        const share = shares.get(speck) ?? new Map<number, number>();
        const yarn = yarns[beside === one ? pixel : next]!;
        share.set(yarn, (share.get(yarn) ?? 0) + (small[beside] ? 0.01 : 1));
        shares.set(speck, share);
      }
    };
    for (let pixel = 0; pixel < of.length; pixel++) {
      if (pixel % width < width - 1) meet(pixel, pixel + 1);
      if (pixel + width < of.length) meet(pixel, pixel + width);
    }
    const becomes = new Int16Array(sizes.length).fill(-1);
    for (const [speck, share] of shares) {
      let best = -1;
      for (const [yarn, edge] of share) if (best < 0 || edge > share.get(best)!) best = yarn;
      becomes[speck] = best;
    }
    for (let pixel = 0; pixel < of.length; pixel++) {
      const yarn = becomes[of[pixel]!]!;
      if (yarn >= 0) yarns[pixel] = yarn;
    }
  }
  return { width, height, yarns };
}
