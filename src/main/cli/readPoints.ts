import { type PhotoPoint, photoPx } from '../../core/model/units.ts';

/** Four points as typed: `"x,y x,y x,y x,y"`; null when they aren't four pairs of numbers. */
export function readPoints(typed: string): readonly PhotoPoint[] | null {
  const pairs = typed.trim().split(/\s+/);
  if (pairs.length !== 4) return null;
  const points: PhotoPoint[] = [];
  for (const pair of pairs) {
    const parts = pair.split(',');
    const [x, y] = parts.map(Number);
    if (parts.length !== 2 || parts.some((part) => part === '') || !Number.isFinite(x) || !Number.isFinite(y))
      return null;
    points.push({ x: photoPx(x!), y: photoPx(y!) });
  }
  return points;
}
