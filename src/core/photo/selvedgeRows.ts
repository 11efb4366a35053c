import type { EndReading, SelvedgeRow } from '../model/check.ts';
import { type Measurement, measurement } from '../model/measurement.ts';
import type { SideReading } from './sideReading.ts';

/** Both sides as rows. @param common one sigma of what all places share there, mm. */
export function joinSides(
  left: readonly SideReading[],
  right: readonly SideReading[],
  common: (x: number, y: number) => number,
): SelvedgeRow[] {
  const heights = [...new Set([...left, ...right].map((row) => row.y))].sort((a, b) => a - b);
  const at = (rows: readonly SideReading[], y: number): Measurement | null => {
    const x = rows.find((row) => row.y === y)?.x ?? null;
    return x && measurement(x.value, Math.hypot(x.sigma, common(x.value, y)), x.n, x.source);
  };
  return heights.map((y) => ({ y, left: at(left, y), right: at(right, y) }));
}

/** Rows with one side as others have it. */
export function withSide(
  rows: readonly SelvedgeRow[],
  others: readonly SelvedgeRow[],
  which: 'left' | 'right',
): SelvedgeRow[] {
  const heights = [...new Set([...rows, ...others].map((row) => row.y))].sort((a, b) => a - b);
  return heights.map((y) => {
    const row = rows.find((one) => one.y === y) ?? { y, left: null, right: null };
    return { ...row, [which]: others.find((one) => one.y === y)?.[which] ?? null };
  });
}

/** Selvedges no higher than the fell that is still believed nearest to each: above it there may be bare string. */
export function belowFell(rows: readonly SelvedgeRow[], ends: readonly EndReading[]): SelvedgeRow[] {
  const fells = ends.flatMap((end) => (end.fell ? [end.fell.value] : []));
  const [left, right] = [fells[0] ?? 0, fells[fells.length - 1] ?? 0];
  return rows
    .filter((row) => row.y < Math.max(left, right))
    .map((row) => ({ ...row, left: row.y < left ? row.left : null, right: row.y < right ? row.right : null }));
}
