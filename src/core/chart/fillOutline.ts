import type { Outline } from '../cartoon/outline.ts';

/** First place in a rising array whose value is not below `value`. `guess` is where it would be on an even scale. */
function firstNotBelow(values: Float64Array, value: number, guess: number): number {
  let at = Math.min(values.length, Math.max(0, Math.ceil(guess)));
  while (at > 0 && values[at - 1]! >= value) at--;
  while (at < values.length && values[at]! < value) at++;
  return at;
}

const placeOn = (values: Float64Array, value: number): number =>
  values.length < 2 ? 0 : (value - values[0]!) / (values[1]! - values[0]!);

/**
 * Fills the cells whose middles lie in an outline: left and lower edges belong to it, right and upper edges don't, and
 * an edge shared by two shapes gives both the same x. Edge by edge rather than row by row, so that a cartoon can be
 * dragged: the cost is the edges plus the crossings plus the cells filled.
 * @param columnX middles of the ends, mm, rising.
 * @param rowY middles of the passes, mm, rising.
 * @param areas cells, end by end along each pass; the filled ones become `area`.
 * @param firstRow rows below it and from `endRow` on are left alone.
 */
export function fillOutline(
  outline: Outline,
  columnX: Float64Array,
  rowY: Float64Array,
  areas: Uint16Array,
  area: number,
  firstRow: number,
  endRow: number,
): void {
  const ends = columnX.length;
  const rows = endRow - firstRow;
  if (rows <= 0) return;
  const counts = new Int32Array(rows + 1);
  const edges: number[] = [];
  for (const ring of outline.rings) {
    let fromX = ring[ring.length - 2]!;
    let fromY = ring[ring.length - 1]!;
    for (let at = 0; at < ring.length; at += 2) {
      const toX = ring[at]!;
      const toY = ring[at + 1]!;
      if (fromY !== toY) {
        const rises = fromY < toY;
        const lowX = rises ? fromX : toX;
        const lowY = rises ? fromY : toY;
        const highX = rises ? toX : fromX;
        const highY = rises ? toY : fromY;
        const low = Math.max(firstRow, firstNotBelow(rowY, lowY, placeOn(rowY, lowY)));
        const high = Math.min(endRow, firstNotBelow(rowY, highY, placeOn(rowY, highY)));
        if (low < high) {
          edges.push(lowX, lowY, highX, highY, rises ? 1 : -1, low, high);
          for (let row = low; row < high; row++) counts[row - firstRow + 1]!++;
        }
      }
      fromX = toX;
      fromY = toY;
    }
  }
  for (let row = 0; row < rows; row++) counts[row + 1]! += counts[row]!;
  const crossingX = new Float64Array(counts[rows]!);
  const crossingWay = new Int8Array(counts[rows]!);
  const used = counts.slice(0, rows);
  for (let edge = 0; edge < edges.length; edge += 7) {
    const lowX = edges[edge]!;
    const lowY = edges[edge + 1]!;
    const run = edges[edge + 2]! - lowX;
    const rise = edges[edge + 3]! - lowY;
    for (let row = edges[edge + 5]!; row < edges[edge + 6]!; row++) {
      const x = lowX + ((rowY[row]! - lowY) * run) / rise;
      // Kept sorted as they come: a row rarely has more than a handful.
      const start = counts[row - firstRow]!;
      let place = used[row - firstRow]!++;
      while (place > start && crossingX[place - 1]! > x) {
        crossingX[place] = crossingX[place - 1]!;
        crossingWay[place] = crossingWay[place - 1]!;
        place--;
      }
      crossingX[place] = x;
      crossingWay[place] = edges[edge + 4]!;
    }
  }
  const evenOdd = outline.fillRule === 'evenodd';
  for (let row = 0; row < rows; row++) {
    let winding = 0;
    for (let at = counts[row]!; at + 1 < counts[row + 1]!; at++) {
      winding += evenOdd ? 1 : crossingWay[at]!;
      const inside = evenOdd ? (winding & 1) === 1 : winding !== 0;
      if (!inside || crossingX[at] === crossingX[at + 1]) continue;
      const from = firstNotBelow(columnX, crossingX[at]!, placeOn(columnX, crossingX[at]!));
      const to = firstNotBelow(columnX, crossingX[at + 1]!, placeOn(columnX, crossingX[at + 1]!));
      if (from < to) areas.fill(area, (firstRow + row) * ends + from, (firstRow + row) * ends + to);
    }
  }
}
