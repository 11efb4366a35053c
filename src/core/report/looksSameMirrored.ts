import type { Piece } from '../model/piece.ts';
import type { Chart } from '../model/plan.ts';
import { offCentre } from '../warp/centring.ts';

/** Share of the cells that may differ: where an edge moves a pass sooner than its mirror image, nobody sees it. */
const UNSEEN = 0.01;

/**
 * Whether a photograph of the loom turned over, as in a looking-glass, would look the same: the same yarns left and
 * right all the way up but for a cell here and there, and the warp on the middle of the loom to within a quarter notch.
 */
export function looksSameMirrored({ loom, warp }: Pick<Piece, 'loom' | 'warp'>, chart: Chart): boolean {
  if (Math.abs(offCentre(loom, warp)) > loom.notchPitch / 4) return false;
  const { cells, ends, passes } = chart;
  let differing = 0;
  for (let pass = 0; pass < passes; pass++) {
    const row = pass * ends;
    for (let end = 0; end < ends >> 1; end++) {
      if (cells[row + end] !== cells[row + ends - 1 - end]) differing++;
    }
  }
  return differing <= UNSEEN * passes * (ends >> 1);
}
