import type { Piece } from '../model/piece.ts';
import type { Chart } from '../model/plan.ts';
import { offCentre } from '../warp/centring.ts';

/**
 * Whether a photograph of the loom turned over, as in a looking-glass, would look the same: the same yarns left and
 * right all the way up, and the warp on the middle of the loom to within a quarter of a notch.
 */
export function looksSameMirrored({ loom, warp }: Pick<Piece, 'loom' | 'warp'>, chart: Chart): boolean {
  if (Math.abs(offCentre(loom, warp)) > loom.notchPitch / 4) return false;
  const { cells, ends, passes } = chart;
  for (let pass = 0; pass < passes; pass++) {
    const row = pass * ends;
    for (let end = 0; end < ends >> 1; end++) {
      if (cells[row + end] !== cells[row + ends - 1 - end]) return false;
    }
  }
  return true;
}
