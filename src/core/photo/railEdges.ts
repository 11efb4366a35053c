import type { Expected } from './coarseLoom.ts';
import { type EdgeProfile, edgeProfile, supportAt } from './edgeProfile.ts';
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
  const reach = expected.openingWidth / 2 + expected.bar + 4.5 * expected.pitch;
  const rows: number[] = [];
  for (let y = 0.06 * expected.openingHeight; y < 0.94 * expected.openingHeight; y += 3) rows.push(y);
  return edgeProfile(picture, toSmall, -reach, reach, STEP, rows, (x) => x <= warpLeft || x >= warpRight);
}

/**
 * By how many notches the comb was tied to the wrong ones: the rails must stand half an opening from the notches'
 * middle on both sides, equally far off if at all.
 * @returns the shift to add, in whole or half notches, and the support the rails have there (0–3) and at no shift.
 */
export function notchShift(
  profile: EdgeProfile,
  expected: Expected,
  most: number,
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
  // Half steps too: a comb of gaps taken for strings lies half a pitch aside.
  for (let k = -most; k <= most; k += 0.5) {
    // True rails seen at x + k pitches mean that the comb's notches are k too high.
    const move = k * expected.pitch;
    const support = 2 * pairSupport(half, move, -1, 1.6) + pairSupport(half + expected.bar, move, -1.6, 1);
    const favoured = support + (k === 0 ? 0.25 : Number.isInteger(k) ? 0 : -0.15);
    if (k === 0) result = { ...result, unshifted: support };
    if (favoured > result.support) result = { ...result, shift: -k, support: favoured };
  }
  return result;
}
