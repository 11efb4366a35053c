import { type EdgeProfile, edgeProfile, supportAt } from './edgeProfile.ts';
import type { Expected } from './expected.ts';
import type { ColourRaster } from './reduce.ts';

const STEP = 0.4;

/**
 * Collects upright edges beside the warp, at a first camera's idea of the loom frame.
 * @param toSmall loom mm to pixels of `picture`.
 */
export function railProfile(
  picture: ColourRaster,
  toSmall: (x: number, y: number) => { x: number; y: number },
  expected: Expected,
  warpLeft: number,
  warpRight: number,
): EdgeProfile {
  const reach = expected.openingWidth / 2 + expected.bar + Math.min(60, 8.5 * expected.pitch);
  const rows: number[] = [];
  for (let y = 0.06 * expected.openingHeight; y < 0.94 * expected.openingHeight; y += 3) rows.push(y);
  const use = (x: number) => x <= warpLeft || x >= warpRight;
  const profile = edgeProfile(picture, toSmall, -reach, reach, STEP, rows, use);
  // On a striped or checkered table every place has edges: only what stands out from that counts.
  const beside = [...profile.support.filter((value, k) => value > 0 && use(profile.from + k * STEP))].sort(
    (a, b) => a - b,
  );
  const usual = beside[beside.length >> 1] ?? 0;
  return { ...profile, support: profile.support.map((value) => Math.max(0, (value - usual) / (1 - usual + 1e-6))) };
}

/**
 * By how many notches the comb was tied to the wrong ones: the rails must stand half an opening from the notches'
 * middle on both sides, equally far off if at all.
 * @param halves try half steps too: a comb of gaps taken for strings lies half a pitch aside.
 * @returns the shift to add, in whole or half notches, and the support the rails have there (0–3) and at no shift.
 */
export function notchShift(
  profile: EdgeProfile,
  expected: Expected,
  most: number,
  halves: boolean,
): { shift: number; support: number; unshifted: number } {
  const half = expected.openingWidth / 2;
  const pairSupport = (distance: number, shift: number, least: number, largest: number) => {
    let best = 0;
    for (let off = least; off <= largest; off += STEP / 2) {
      best = Math.max(
        best,
        Math.sqrt(
          (0.02 + supportAt(profile, -distance - off + shift)) * (0.02 + supportAt(profile, distance + off + shift)),
        ),
      );
    }
    return best;
  };
  let result = { shift: 0, support: -1, unshifted: 0 };
  for (let k = -most; k <= most; k += halves ? 0.5 : 1) {
    // True rails seen at x + k pitches mean that the comb's notches are k too high.
    const move = k * expected.pitch;
    const support = 2 * pairSupport(half, move, -1, 1.6) + pairSupport(half + expected.bar, move, -1.6, 1);
    const favoured = support + (k === 0 ? 0.25 : Number.isInteger(k) ? 0 : -0.15) - 0.03 * Math.abs(k);
    if (k === 0) result = { ...result, unshifted: support };
    if (favoured > result.support) result = { ...result, shift: k === 0 ? 0 : -k, support: favoured };
  }
  return result;
}
