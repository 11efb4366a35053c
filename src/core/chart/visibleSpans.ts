import { type Outline, outlinesOf, spansAt } from '../cartoon/outline.ts';
import type { Piece } from '../model/piece.ts';
import { type ClothGrid, endX } from './clothGrid.ts';
import { clothBox } from './sampleAreas.ts';

/** A stretch of a level line over which one area shows. Edges in mm; `area` as in `Chart.areas`, 0 the ground. */
export interface VisibleSpan {
  readonly from: number;
  readonly to: number;
  readonly area: number;
}

/** The outlines of every shape that shows, topmost first. */
export interface DrawnShapes {
  readonly left: number;
  readonly right: number;
  readonly shapes: readonly { readonly area: number; readonly outlines: readonly Outline[] }[];
}

export function drawnShapes(piece: Piece, grid: ClothGrid): DrawnShapes {
  const box = clothBox(grid);
  return {
    left: endX(grid, 0) - grid.pitch / 2,
    right: endX(grid, grid.ends - 1) + grid.pitch / 2,
    shapes: piece.shapes.flatMap((shape, index) =>
      shape.hidden ? [] : [{ area: index + 1, outlines: outlinesOf(shape, box) }],
    ),
  };
}

/**
 * What shows along a level line across the cloth, from left to right without a gap: the first shape that covers a
 * place, else the ground. Neighbouring spans have different areas.
 */
export function visibleSpansAt(drawn: DrawnShapes, y: number): readonly VisibleSpan[] {
  let free: { from: number; to: number }[] = [{ from: drawn.left, to: drawn.right }];
  const seen: VisibleSpan[] = [];
  for (const { area, outlines } of drawn.shapes) {
    for (const outline of outlines) {
      if (free.length === 0) break;
      if (y < outline.box.bottom || y >= outline.box.top) continue;
      const spans = spansAt(outline, y);
      for (let at = 0; at + 1 < spans.length; at += 2) {
        const left = spans[at]!;
        const right = spans[at + 1]!;
        const rest: typeof free = [];
        for (const gap of free) {
          const from = Math.max(gap.from, left);
          const to = Math.min(gap.to, right);
          if (from >= to) {
            rest.push(gap);
            continue;
          }
          seen.push({ from, to, area });
          if (gap.from < from) rest.push({ from: gap.from, to: from });
          if (to < gap.to) rest.push({ from: to, to: gap.to });
        }
        free = rest;
      }
    }
  }
  for (const gap of free) seen.push({ ...gap, area: 0 });
  seen.sort((one, other) => one.from - other.from);
  const merged: VisibleSpan[] = [];
  for (const span of seen) {
    const last = merged.at(-1);
    if (last !== undefined && last.area === span.area) merged[merged.length - 1] = { ...last, to: span.to };
    else merged.push(span);
  }
  return merged;
}
