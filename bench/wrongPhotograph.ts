import type { PhotoTruth } from '../scripts/pictures/spoiltLooms.ts';
import type { LoomReading } from '../src/core/model/check.ts';
import type { Measurement } from '../src/core/model/measurement.ts';

/** One reported figure against truth. */
export interface FigureError {
  readonly kind: 'selvedge' | 'fell';
  readonly what: string;
  readonly error: number;
  readonly sigma: number;
}

/**
 * Every reported selvedge and fell that truth knows, in one frame.
 * @param planShift mm by which the reading's x = 0 lies right of truth's
 * @param endShift ends by which the reading's end 0 lies right of truth's
 */
export function figureErrors(reading: LoomReading, truth: PhotoTruth, planShift = 0, endShift = 0): FigureError[] {
  const found: FigureError[] = [];
  const note = (kind: FigureError['kind'], what: string, read: Measurement | null, real: number | null): void => {
    if (read && real !== null) found.push({ kind, what, error: read.value - real, sigma: read.sigma });
  };
  for (const end of reading.ends) {
    const real = truth.ends.find((entry) => entry.index === end.index + endShift);
    if (real) note('fell', `fell of end ${end.index + 1}`, end.fell, real.fell_mm);
  }
  const rows = truth.selvedge;
  for (const row of reading.selvedge) {
    const after = rows.findIndex((entry) => entry.y_mm >= row.y);
    const above = rows[after];
    const below = rows[after - 1] ?? above;
    if (!above || !below) continue;
    const share = above.y_mm > below.y_mm ? (row.y - below.y_mm) / (above.y_mm - below.y_mm) : 0;
    if (share < 0) continue;
    const real = (a: number | null, b: number | null): number | null =>
      a === null || b === null ? null : a + (b - a) * share - planShift;
    note('selvedge', `left edge at ${row.y} mm`, row.left, real(below.left_mm, above.left_mm));
    note('selvedge', `right edge at ${row.y} mm`, row.right, real(below.right_mm, above.right_mm));
  }
  return found;
}

/** Off by more than 1.5 mm and more than 3 of its own sigma, or by more than 4 mm whatever its sigma. */
const isWrong = ({ error, sigma }: FigureError): boolean =>
  (Math.abs(error) > 1.5 && Math.abs(error) > 3 * sigma) || Math.abs(error) > 4;

/**
 * The figures that make a photograph wrong. With a brief that isn't its own, a reading may hold to the brief's frame or
 * to the warp really there, so the kinder of the two is taken; but all its figures must hold to the same one.
 */
export function wrongFigures(reading: LoomReading, truth: PhotoTruth, planShift = 0, endShift = 0): FigureError[] {
  if (reading.status !== 'measured') return [];
  const frames = [figureErrors(reading, truth).filter(isWrong)];
  if (planShift || endShift) frames.push(figureErrors(reading, truth, planShift, endShift).filter(isWrong));
  return frames.reduce((best, next) => (next.length < best.length ? next : best));
}
