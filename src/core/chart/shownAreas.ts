import type { Piece } from '../model/piece.ts';
import { type ClothGrid, heightOfPasses } from './clothGrid.ts';
import { type DrawnShapes, drawnShapes, visibleSpansAt } from './visibleSpans.ts';

/** How much of every area shows in the drawing: `[ground, shape 0, shape 1 …]`. */
export interface ShownAreas {
  /** In cells, header and footer left out. */
  readonly cells: Float64Array;
  /** For every area and pass (`area * passes + pass`) 1 where the drawn area ends inside the cloth, else 0. */
  readonly edged: Uint8Array;
}

/** Heights of the level edges of a drawing, mm, rising. */
function levelHeights(drawn: DrawnShapes): Float64Array {
  const heights = new Set<number>();
  for (const { outlines } of drawn.shapes) {
    for (const { rings } of outlines) {
      for (const ring of rings) {
        let fromY = ring[ring.length - 1]!;
        for (let at = 1; at < ring.length; at += 2) {
          if (ring[at] === fromY) heights.add(fromY);
          fromY = ring[at]!;
        }
      }
    }
  }
  return Float64Array.from(heights).sort();
}

/**
 * The area of the drawing itself, not of the cells whose middles it covers: pass by pass, each cut where a level edge
 * lies within it, and every slice taken at its middle, which is exact between straight lines.
 */
export function shownAreas(piece: Piece, grid: ClothGrid): ShownAreas {
  const { passes } = grid;
  const drawn = drawnShapes(piece, grid);
  const levels = levelHeights(drawn);
  const count = piece.shapes.length + 1;
  const cells = new Float64Array(count);
  const edged = new Uint8Array(count * passes);
  let level = 0;
  for (let pass = grid.header; pass < passes - grid.footer; pass++) {
    const bottom = heightOfPasses(grid, pass);
    const top = heightOfPasses(grid, pass + 1);
    while (level < levels.length && levels[level]! <= bottom) level++;
    for (let from = bottom; from < top; ) {
      const to = level < levels.length && levels[level]! < top ? levels[level++]! : top;
      for (const span of visibleSpansAt(drawn, (from + to) / 2)) {
        cells[span.area]! += ((span.to - span.from) / grid.pitch) * ((to - from) / (top - bottom));
        if (span.from > drawn.left || span.to < drawn.right) edged[span.area * passes + pass] = 1;
      }
      from = to;
    }
  }
  return { cells, edged };
}

/** Passes on which each area ends inside the cloth, drawn or woven. @param areas of the cells woven. */
export function boundaryRows({ edged }: ShownAreas, areas: Uint16Array, ends: number): Uint32Array {
  const passes = areas.length / ends;
  const count = edged.length / passes;
  const either = edged.slice();
  for (let pass = 0; pass < passes; pass++) {
    for (let cell = pass * ends + 1; cell < (pass + 1) * ends; cell++) {
      const [left, right] = [areas[cell - 1]!, areas[cell]!];
      if (left === right) continue;
      if (left < count) either[left * passes + pass] = 1;
      if (right < count) either[right * passes + pass] = 1;
    }
  }
  const rows = new Uint32Array(count);
  for (let area = 0; area < count; area++) {
    for (let pass = 0; pass < passes; pass++) rows[area]! += either[area * passes + pass]!;
  }
  return rows;
}

/** Cells of every area, of so many; header and footer left out. */
export function cellsOf(areas: Uint16Array, count: number): Float64Array {
  const cells = new Float64Array(count);
  for (let cell = 0; cell < areas.length; cell++) if (areas[cell]! < count) cells[areas[cell]!]!++;
  return cells;
}
