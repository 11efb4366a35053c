import type { EdgeCourse } from '../../../core/compare/edgeCourse.ts';
import type { LoomReading } from '../../../core/model/check.ts';
import type { Measurement } from '../../../core/model/measurement.ts';
import { seenRuns } from './overlayPaths.ts';

export interface EdgePoint {
  readonly y: number;
  /** mm, positive is out. */
  readonly out: number;
  readonly sigma: number;
}

/** How far one selvedge lies from the plan, by height, in runs: where it was not seen there is a gap. */
export function edgeRuns(reading: LoomReading, course: EdgeCourse): EdgePoint[][] {
  const byHeight = new Map(course.points.map((point) => [point.y, point]));
  const rows = [...reading.selvedge].sort((one, other) => one.y - other.y);
  return seenRuns(rows, (row) => byHeight.get(row.y) ?? null);
}

/** The newest stretch of one edge as one figure: the middle over its topmost 10 mm. */
export function edgeAtFell(course: EdgeCourse): Measurement | null {
  const top = course.points.at(-1);
  if (top === undefined) return null;
  const newest = course.points.filter((point) => point.y > top.y - 10).sort((one, other) => one.out - other.out);
  const middle = newest[Math.floor(newest.length / 2)] ?? top;
  return { value: middle.out, sigma: middle.sigma, n: newest.length, source: 'topmost 10 mm' };
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
