import type { SelvedgeRow } from '../model/check.ts';
import type { Measurement } from '../model/measurement.ts';
import type { PlannedSelvedges } from '../warp/plannedSelvedges.ts';

/** How far one selvedge lies out from plan at one height; positive is out, null is not seen. */
export interface EdgeDeviation {
  readonly y: number;
  readonly deviation: Measurement | null;
}

/** One edge's distance from plan by height, from the foot up. */
export function edgeDeviations(
  rows: readonly SelvedgeRow[],
  planned: PlannedSelvedges,
  side: 'left' | 'right',
): EdgeDeviation[] {
  return [...rows]
    .sort((one, other) => one.y - other.y)
    .map((row) => {
      const seen = row[side];
      if (seen === null) return { y: row.y, deviation: null };
      const value = side === 'left' ? planned.left - seen.value : seen.value - planned.right;
      return { y: row.y, deviation: { ...seen, value } };
    });
}
