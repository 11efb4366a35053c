import { inBothUnits } from '../model/bothUnits.ts';
import type { EndReading, Flag } from '../model/check.ts';
import { sizeAsFinding } from '../model/deviationWords.ts';
import { measurement } from '../model/measurement.ts';

/** Gaps looked at together: spreading pushes several ends apart. */
const GAPS = 5;

/** Ends pushed apart or together inside the cloth, by where they stand at the fell. Edges have flags of their own. */
export function spreadFlags(ends: readonly EndReading[], pitch: number, allowance: number): Flag[] {
  let worst: Flag | null = null;
  for (let i = 0; i + GAPS < ends.length; i++) {
    const left = ends[i]!.xAtFell;
    const right = ends[i + GAPS]!.xAtFell;
    if (!left || !right) continue;
    const span = ends[i + GAPS]!.index - ends[i]!.index;
    const wide = right.value - left.value - span * pitch;
    const sigma = Math.hypot(left.sigma, right.sigma);
    if (wide <= allowance || wide <= 2 * sigma || (worst && worst.deviationMm >= wide)) continue;
    const middle = ends[i + Math.floor(GAPS / 2)]!;
    const number = middle.index + 1;
    worst = {
      kind: 'spreading',
      side: null,
      yMm: middle.fell?.value ?? null,
      xMm: middle.xAtFell?.value ?? null,
      ends: [],
      deviationMm: wide,
      sigmaMm: sigma,
      message: inBothUnits((units) => {
        const size = sizeAsFinding(measurement(wide, sigma, 1, 'ends'), units);
        return `The warp is spreading round end ${number}: ${size.figure} too wide over ${span} ends, ${size.giveOrTake}.`;
      }),
      advice: 'Pack less there, or take one turn out.',
    };
  }
  return worst ? [worst] : [];
}
