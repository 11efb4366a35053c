import { outlinesOf } from '../cartoon/outline.ts';
import type { Piece } from '../model/piece.ts';
import { HEADER_AREA } from '../model/plan.ts';
import { type ClothGrid, endX, heightOfPasses, passY } from './clothGrid.ts';
import { fillOutline } from './fillOutline.ts';
import { type DrawnArea, middleEnd } from './middleEnd.ts';

/**
 * How far towards the middle of the cloth a cell's middle is taken to lie, as a share of a cell. An edge drawn exactly
 * through the middles of an end would otherwise count that end in on one side of a symmetric shape and out on the
 * other; so it falls the same way on both sides, and when the piece is turned upside down. The end in the very middle of
 * an odd warp has no such side: see `middleEnd`.
 */
const TOWARDS_MIDDLE = 1e-6;

/**
 * Middles of the ends, mm, as sampled.
 * @param shift in ends; -0.5 gives the borders left of them.
 */
export function sampleColumns(grid: ClothGrid, shift = 0): Float64Array {
  const columns = new Float64Array(grid.ends);
  for (let end = 0; end < grid.ends; end++) columns[end] = endX(grid, end + shift) * (1 - TOWARDS_MIDDLE / grid.ends);
  return columns;
}

/** Middles of the passes, mm, as sampled. */
export function sampleRows(grid: ClothGrid): Float64Array {
  const middle = heightOfPasses(grid, grid.passes) / 2;
  const rows = new Float64Array(grid.passes);
  for (let pass = 0; pass < grid.passes; pass++) {
    rows[pass] = middle + (passY(grid, pass) - middle) * (1 - TOWARDS_MIDDLE / grid.passes);
  }
  return rows;
}

/** The sheet the shapes are drawn on: bands run across all of it. */
export const clothBox = (grid: ClothGrid) => ({
  left: (-grid.ends * grid.pitch) / 2,
  right: (grid.ends * grid.pitch) / 2,
  bottom: 0,
  top: heightOfPasses(grid, grid.passes),
});

/**
 * The drawing laid on the warp, before anything is said about turns: for every cell the first shape, in the order of the
 * list, that contains its middle; else the ground; the header and footer rows apart.
 * @param columns where to look along a pass: the middles of the ends unless said otherwise.
 * @returns areas as in `Chart.areas`: 0 ground, 1 + shape index, `HEADER_AREA`.
 */
export function sampleAreas(piece: Piece, grid: ClothGrid, columns = sampleColumns(grid)): Uint16Array {
  const areas = new Uint16Array(grid.ends * grid.passes);
  const rows = sampleRows(grid);
  const box = clothBox(grid);
  const firstRow = grid.header;
  const endRow = grid.passes - grid.footer;
  const drawn: DrawnArea[] = [];
  for (let index = piece.shapes.length - 1; index >= 0; index--) {
    const shape = piece.shapes[index]!;
    if (shape.hidden) continue;
    const outlines = outlinesOf(shape, box);
    drawn.push({ area: index + 1, outlines });
    for (const outline of outlines) fillOutline(outline, columns, rows, areas, index + 1, firstRow, endRow);
  }
  const middle = (grid.ends - 1) / 2;
  if (columns[middle] === 0) {
    const settled = middleEnd(drawn, rows, grid.pitch * TOWARDS_MIDDLE, firstRow, endRow);
    settled?.forEach((area, row) => {
      areas[row * grid.ends + middle] = area;
    });
  }
  areas.fill(HEADER_AREA, 0, firstRow * grid.ends);
  areas.fill(HEADER_AREA, endRow * grid.ends);
  return areas;
}
