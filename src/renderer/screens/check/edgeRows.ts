import type { LoomReading } from '../../../core/model/check.ts';
import { edgeDeviations } from '../../../core/report/edgeDeviations.ts';
import type { PlannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import { seenRuns } from './overlayPaths.ts';

export interface EdgePoint {
  readonly y: number;
  /** mm, positive is out. */
  readonly out: number;
  readonly sigma: number;
}

/** How far one selvedge lies from the plan, by height, in runs: where it was not seen there is a gap. */
export function edgeRuns(reading: LoomReading, edges: PlannedSelvedges, side: 'left' | 'right'): EdgePoint[][] {
  return seenRuns(edgeDeviations(reading.selvedge, edges, side), ({ y, deviation }) =>
    deviation === null ? null : { y, out: deviation.value, sigma: deviation.sigma },
  );
}

/** How many times wider than the photograph a strip is drawn: 4, or less where the edge would leave the strip. */
export function stripFactor(runs: readonly EdgePoint[][], scale: number, width: number): 4 | 2 | 1 {
  const furthestIn = Math.max(0, ...runs.flat().map((point) => -point.out));
  const furthestOut = Math.max(0, ...runs.flat().map((point) => point.out));
  for (const factor of [4, 2] as const) {
    const inRoom = (width * 0.68) / (scale * factor);
    const outRoom = (width * 0.32) / (scale * factor);
    if (furthestIn < inRoom && furthestOut < outRoom) return factor;
  }
  return 1;
}
