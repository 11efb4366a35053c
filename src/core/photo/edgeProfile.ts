import type { ColourRaster } from './reduce.ts';
import { insidePicture, sampleColour } from './sample.ts';
import { woodEnds } from './woodEnds.ts';

/** How many of many parallel rows have an edge at each place of a loom coordinate. */
export interface EdgeProfile {
  readonly from: number;
  readonly step: number;
  /** Share of the rows (0–1), weighted by how sharp the edge is. */
  readonly support: Float64Array;
}

/** How many places either side an edge is judged by. */
const BESIDE = 3;

/**
 * Reads many rows across an edge's expected place and counts where colour steps.
 * @param place picture position of (value across, row).
 * @param woodAt a value at which the wood itself is seen: beyond it only edges count at which wood ends.
 */
export function edgeProfile(
  picture: ColourRaster,
  place: (value: number, row: number) => { x: number; y: number },
  from: number,
  to: number,
  step: number,
  rows: readonly number[],
  use: (value: number) => boolean,
  woodAt: number | null = null,
): EdgeProfile {
  const count = Math.ceil((to - from) / step) + 1;
  const votes = new Float64Array(count);
  const seen = new Float64Array(count);
  const colours = new Float64Array(count * 3);
  const inside = new Uint8Array(count);
  const strength = new Float64Array(count);
  const used = Uint8Array.from({ length: count }, (_, k) => (use(from + k * step) ? 1 : 0));
  const wood = woodAt === null ? count : Math.round((woodAt - from) / step);
  // Only places that help to judge a used one are read.
  const read: number[] = [];
  const judged: number[] = [];
  for (let k = 0; k < count; k++) {
    if (used.subarray(Math.max(0, k - BESIDE), k + BESIDE + 1).includes(1)) read.push(k);
    if (used[k] && k >= BESIDE && k < count - BESIDE) judged.push(k);
  }
  for (const row of rows) {
    for (const k of read) {
      const at = place(from + k * step, row);
      inside[k] = insidePicture(picture, at.x, at.y) ? 1 : 0;
      if (inside[k]) sampleColour(picture, at.x, at.y, colours, 3 * k);
    }
    strength.fill(0);
    for (const k of judged) {
      if (!inside[k - BESIDE] || !inside[k + BESIDE]) continue;
      let sum = 0;
      for (let c = 0; c < 3; c++) {
        let rise = 0;
        for (let d = 1; d <= BESIDE; d++) rise += colours[3 * (k + d) + c]! - colours[3 * (k - d) + c]!;
        const mean = rise / BESIDE;
        sum += mean * mean;
      }
      strength[k] = Math.sqrt(sum);
      seen[k]! += 1;
    }
    for (let k = 3; k < count - 3; k++) {
      const here = strength[k]!;
      if (here < 6 || here < strength[k - 1]! || here < strength[k + 1]!) continue;
      if (k > wood + 2 * BESIDE && !woodEnds(colours, 3 * wood, 3 * (k - BESIDE), 3 * (k + BESIDE))) continue;
      const share = Math.min(1, here / 25);
      for (let d = -2; d <= 2; d++) votes[k + d]! += share * (d === 0 ? 1 : Math.abs(d) === 1 ? 0.8 : 0.4);
    }
  }
  const most = seen.reduce((a, b) => Math.max(a, b), 0);
  const support = votes.map((value, k) => (seen[k]! > 0.2 * most ? Math.min(1, value / seen[k]!) : 0));
  return { from, step, support };
}

export const supportAt = (profile: EdgeProfile, value: number): number => {
  const at = (value - profile.from) / profile.step;
  const k = Math.floor(at);
  const a = profile.support[k] ?? 0;
  const b = profile.support[k + 1] ?? 0;
  return a + (at - k) * (b - a);
};
