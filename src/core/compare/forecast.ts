import { type BothUnits, inBothUnits } from '../model/bothUnits.ts';
import { inchesInWords } from '../model/lengthWords.ts';
import { MM_PER_INCH } from '../model/units.ts';
import type { EdgeCourse, Side } from './edgeCourse.ts';

/** Where an edge will be at the planned top if it goes on as it does now: a range, never one figure. */
export interface EdgeForecast {
  readonly side: Side;
  readonly atMm: number;
  /** Deviation from plan, positive out: the nearer and the farther end of the range, mm. */
  readonly from: number;
  readonly to: number;
  /** One sentence, for example `At this rate the right edge is 5 to 8 mm in at the top.` Null when it agrees with plan. */
  readonly sentence: BothUnits | null;
}

/** The trend is read over this much of the cloth below the fell, mm. */
const TREND = 40;
/** And over no fewer readings than this. */
const FEWEST = 6;

/** A range in inches is said to this part of one. */
const PART = 16;

export function forecastEdge(course: EdgeCourse, plannedHeight: number, allowance: number): EdgeForecast | null {
  const last = course.points[course.points.length - 1];
  if (!last || last.y >= plannedHeight) return null;
  const recent = course.points.filter((point) => point.y >= last.y - TREND);
  if (recent.length < FEWEST) return null;
  const n = recent.length;
  const meanY = recent.reduce((sum, point) => sum + point.y, 0) / n;
  const meanOut = recent.reduce((sum, point) => sum + point.out, 0) / n;
  const spread = recent.reduce((sum, point) => sum + (point.y - meanY) ** 2, 0);
  const slope = recent.reduce((sum, point) => sum + (point.y - meanY) * (point.out - meanOut), 0) / spread;
  const rest = Math.sqrt(
    recent.reduce((sum, point) => sum + (point.out - meanOut - slope * (point.y - meanY)) ** 2, 0) / Math.max(1, n - 2),
  );
  const noise = Math.max(rest, recent.reduce((sum, point) => sum + point.sigma, 0) / n);
  const ahead = plannedHeight - meanY;
  const value = meanOut + slope * ahead;
  // Readings 2 mm apart share floats: about every third is new.
  const sigma = noise * Math.sqrt(3 * (1 / n + (ahead * ahead) / spread));
  const from = value - 2 * sigma;
  const to = value + 2 * sigma;
  return { side: course.side, atMm: plannedHeight, from, to, sentence: words(course.side, from, to, allowance) };
}

function words(side: Side, from: number, to: number, allowance: number): BothUnits | null {
  if (Math.max(Math.abs(from), Math.abs(to)) <= allowance) return null;
  // A range that takes in the plan itself says nothing yet.
  if (from < 0 && to > 0) return null;
  const inward = to <= 0;
  const near = Math.min(Math.abs(from), Math.abs(to));
  const far = Math.max(Math.abs(from), Math.abs(to));
  return inBothUnits((units) => {
    if (units === 'mm') {
      const way = inward ? 'in' : 'out';
      return `At this rate the ${side} edge is ${Math.floor(near)} to ${Math.ceil(far)} mm ${way} at the top.`;
    }
    const low = inchesInWords(Math.floor((near / MM_PER_INCH) * PART) / PART, PART);
    const high = inchesInWords(Math.ceil((far / MM_PER_INCH) * PART) / PART, PART);
    return `At this rate the ${side} edge is ${low} to ${high} inch ${inward ? 'narrow' : 'wide'} at the top.`;
  });
}
