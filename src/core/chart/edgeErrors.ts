import type { Piece } from '../model/piece.ts';
import { type Chart, type EdgeError, HEADER_AREA, type ShapeArea } from '../model/plan.ts';
import { clothGridOf, passY } from './clothGrid.ts';
import { drawnShapes, type VisibleSpan, visibleSpansAt } from './visibleSpans.ts';

/** Which shape an edge belongs to: the upper of the two that meet, and the side of it the edge is on. */
function ownerOf(leftArea: number, rightArea: number): { readonly area: number; readonly side: 'left' | 'right' } {
  const leftIsUpper = leftArea !== 0 && (rightArea === 0 || leftArea < rightArea);
  return leftIsUpper ? { area: leftArea, side: 'right' } : { area: rightArea, side: 'left' };
}

/** The drawn edge of an area and side nearest to x; NaN where there is none at this height. */
function nearestDrawn(spans: readonly VisibleSpan[], area: number, side: 'left' | 'right', x: number): number {
  let nearest = Number.NaN;
  for (let at = 0; at + 1 < spans.length; at++) {
    const owner = ownerOf(spans[at]!.area, spans[at + 1]!.area);
    if (owner.area !== area || owner.side !== side) continue;
    const edge = spans[at]!.to;
    if (Number.isNaN(nearest) || Math.abs(edge - x) < Math.abs(nearest - x)) nearest = edge;
  }
  return nearest;
}

export interface ChartFidelity {
  readonly edges: readonly EdgeError[];
  readonly areas: readonly ShapeArea[];
}

/**
 * How the stepped chart stands to the drawing. At the middle of every pass: the distance in x from each boundary of the
 * chart to the drawn line of the same shape and side, less half an end and less what the line runs in one turn; it
 * should come to 0. And the area each shape shows in the drawing against the area woven.
 */
export function chartFidelity(piece: Piece, chart: Chart): ChartFidelity {
  const grid = clothGridOf(piece);
  const drawn = drawnShapes(piece, grid);
  const lines: (readonly VisibleSpan[])[] = [];
  for (let pass = 0; pass < grid.passes; pass++) lines.push(visibleSpansAt(drawn, passY(grid, pass)));
  const worst = new Map<string, { area: number; side: 'left' | 'right'; largest: number; excess: number }>();
  const woven = new Float64Array(piece.shapes.length + 1);
  const drawnArea = new Float64Array(piece.shapes.length + 1);
  const boundaryRows = new Uint32Array(piece.shapes.length + 1);
  for (let pass = grid.header; pass < grid.passes - grid.footer; pass++) {
    const base = pass * grid.ends;
    const touched = new Set<number>();
    for (const span of lines[pass]!) drawnArea[span.area]! += (span.to - span.from) * grid.passHeight;
    for (let end = 0; end < grid.ends; end++) {
      const area = chart.areas[base + end]!;
      if (area === HEADER_AREA) continue;
      woven[area]! += grid.pitch * grid.passHeight;
      if (end === 0 || chart.areas[base + end - 1] === area) continue;
      touched.add(area).add(chart.areas[base + end - 1]!);
      const x = drawn.left + end * grid.pitch;
      const owner = ownerOf(chart.areas[base + end - 1]!, area);
      const line = nearestDrawn(lines[pass]!, owner.area, owner.side, x);
      if (Number.isNaN(line)) continue;
      const above = pass + 1 < grid.passes ? nearestDrawn(lines[pass + 1]!, owner.area, owner.side, line) : Number.NaN;
      const below = pass > 0 ? nearestDrawn(lines[pass - 1]!, owner.area, owner.side, line) : Number.NaN;
      const runUp = Math.abs(above - line);
      const runDown = Math.abs(line - below);
      // Where the line begins or ends in this turn it runs as far as it does on the other side.
      const run = Number.isNaN(runUp) ? 2 * runDown : Number.isNaN(runDown) ? 2 * runUp : Math.abs(above - below);
      const key = `${owner.area}${owner.side}`;
      const entry = worst.get(key) ?? { area: owner.area, side: owner.side, largest: 0, excess: 0 };
      const distance = Math.abs(line - x);
      entry.largest = Math.max(entry.largest, distance);
      const steepest = Math.max(run, Number.isNaN(runUp) ? 0 : runUp, Number.isNaN(runDown) ? 0 : runDown);
      if (!Number.isNaN(run)) entry.excess = Math.max(entry.excess, distance - grid.pitch / 2 - steepest);
      worst.set(key, entry);
    }
    for (const area of touched) boundaryRows[area]!++;
  }
  const edges = [...worst.values()]
    .sort((one, other) => one.area - other.area || (one.side < other.side ? -1 : 1))
    .map(
      (entry): EdgeError => ({
        shape: piece.shapes[entry.area - 1]!.id,
        side: entry.side,
        largestMm: entry.largest,
        excessMm: entry.excess < 1e-4 ? 0 : entry.excess,
      }),
    );
  const areas = piece.shapes.map(
    (shape, index): ShapeArea => ({
      shape: shape.id,
      drawnMm2: drawnArea[index + 1]!,
      wovenMm2: woven[index + 1]!,
      boundaryRows: boundaryRows[index + 1]!,
    }),
  );
  return { edges, areas };
}
