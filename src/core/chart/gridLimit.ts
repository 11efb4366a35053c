/** Cells a chart may have: 2,000 ends × 2,000 passes, far beyond what one pair of hands weaves. */
export const MOST_CELLS = 4_000_000;

/** Whether a cloth of this height, woven by passes of this height, can be charted. Lengths in mm. */
export const chartFits = (ends: number, height: number, passHeight: number): boolean =>
  ends * Math.max(1, Math.round(height / passHeight)) <= MOST_CELLS;
