import type { EdgePoint } from './edgeRows.ts';

/** Where an edge would be at the top of the piece if it went on as it does: a range, never one number. */
export interface Forecast {
  readonly from: EdgePoint;
  /** mm out at the top, one sigma either way. */
  readonly low: number;
  readonly high: number;
}

/** Height, mm, over which the present drift is judged. */
const RECENT = 40;

/**
 * The drift over the newest 40 mm carried on to the top. Spoken of only when even the nearer end of the range lies
 * beyond the allowance: a straight edge has no forecast.
 */
export function forecastEdge(runs: readonly EdgePoint[][], planHeight: number, allowance: number): Forecast | null {
  const points = runs.flat();
  const last = points.at(-1);
  if (last === undefined || last.y > planHeight - 10) return null;
  const recent = points.filter((point) => point.y >= last.y - RECENT);
  if (recent.length < 8) return null;
  const meanY = recent.reduce((sum, point) => sum + point.y, 0) / recent.length;
  const meanOut = recent.reduce((sum, point) => sum + point.out, 0) / recent.length;
  const spreadY = recent.reduce((sum, point) => sum + (point.y - meanY) ** 2, 0);
  const slope = recent.reduce((sum, point) => sum + (point.y - meanY) * (point.out - meanOut), 0) / spreadY;
  const scatter = Math.sqrt(
    recent.reduce((sum, point) => sum + (point.out - meanOut - slope * (point.y - meanY)) ** 2, 0) /
      (recent.length - 2),
  );
  const sigma = Math.max(scatter, last.sigma);
  const slopeSigma = sigma / Math.sqrt(spreadY);
  const from = { y: last.y, out: meanOut + slope * (last.y - meanY), sigma: last.sigma };
  const atTop = from.out + slope * (planHeight - last.y);
  const topSigma = Math.hypot(last.sigma, slopeSigma * (planHeight - meanY));
  const low = atTop - topSigma;
  const high = atTop + topSigma;
  const beyond = atTop < 0 ? high < -allowance : low > allowance;
  return beyond && Math.abs(slope) > 2 * slopeSigma ? { from, low, high } : null;
}
