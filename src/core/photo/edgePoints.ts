import { type ColourRaster, enlargedCoordinate } from './reduce.ts';
import { insidePicture, sampleColour } from './sample.ts';
import { woodEnding } from './woodEnds.ts';

/** A point of an edge, photo px. */
export interface PhotoEdgePoint {
  readonly px: number;
  readonly py: number;
}

/**
 * Sub-pixel places where colour steps most, row by row, within `reach` of an expected place.
 * @param place picture position of (value across the edge, row).
 * @param woodAt a value at which the wood itself is seen, for an edge beyond it at which wood ends: a step counts as far
 *   as it does end wood. Null for any step.
 */
export function edgePoints(
  picture: ColourRaster,
  factor: number,
  place: (value: number, row: number) => { x: number; y: number },
  at: number,
  reach: number,
  rows: readonly number[],
  woodAt: number | null = null,
): PhotoEdgePoint[] {
  const step = 0.2;
  const count = Math.round((2 * reach) / step) + 9;
  const from = at - reach - 4 * step;
  const colours = new Float64Array(3 * (count + 1));
  const strength = new Float64Array(count);
  const found: { value: number; row: number }[] = [];
  for (const row of rows) {
    const first = place(from, row);
    const last = place(from + (count - 1) * step, row);
    if (!insidePicture(picture, first.x, first.y) || !insidePicture(picture, last.x, last.y)) continue;
    for (let k = 0; k < count; k++) {
      const share = k / (count - 1);
      sampleColour(picture, first.x + share * (last.x - first.x), first.y + share * (last.y - first.y), colours, 3 * k);
    }
    if (woodAt !== null) {
      const wood = place(woodAt, row);
      sampleColour(picture, wood.x, wood.y, colours, 3 * count);
    }
    strength.fill(0);
    let best = -1;
    let most = 5;
    for (let k = 4; k < count - 4; k++) {
      let sum = 0;
      for (let c = 0; c < 3; c++) {
        let rise = 0;
        for (let d = 1; d <= 4; d++) rise += colours[3 * (k + d) + c]! - colours[3 * (k - d) + c]!;
        sum += (rise / 4) ** 2;
      }
      const ends = woodAt === null ? 1 : woodEnding(colours, 3 * count, 3 * (k - 4), 3 * (k + 4));
      strength[k] = ends * Math.sqrt(sum);
      if (strength[k]! > most) {
        most = strength[k]!;
        best = k;
      }
    }
    if (best < 5 || best > count - 6) continue;
    const before = strength[best - 1]!;
    const after = strength[best + 1]!;
    const bend = before - 2 * most + after;
    found.push({ value: from + (best + (bend < 0 ? (0.5 * (before - after)) / bend : 0)) * step, row });
  }
  return alongOneLine(found).map(({ value, row }) => {
    const seen = place(value, row);
    return { px: enlargedCoordinate(seen.x, factor), py: enlargedCoordinate(seen.y, factor) };
  });
}

/** Drops points far from the running median of their neighbours: another edge was the stronger there. */
function alongOneLine(points: readonly { value: number; row: number }[]): { value: number; row: number }[] {
  return points.filter((point, k) => {
    const near = points.slice(Math.max(0, k - 10), k + 11).map((other) => other.value);
    near.sort((a, b) => a - b);
    return Math.abs(point.value - near[near.length >> 1]!) < 0.4;
  });
}
