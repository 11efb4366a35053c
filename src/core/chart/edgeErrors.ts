import type { Piece } from '../model/piece.ts';
import { type EdgeError, HEADER_AREA, type ShapeArea } from '../model/plan.ts';
import { clothGridOf, type MeasuredCloth, passY } from './clothGrid.ts';
import { changesBetween, distancesToLine, wideSpans } from './drawnLines.ts';
import { keptAreas } from './keptAreas.ts';
import type { SteppedChart } from './makeChart.ts';
import { sampleColumns, sampleRows } from './sampleAreas.ts';
import { drawnShapes, visibleSpansAt } from './visibleSpans.ts';

/** Which shape an edge belongs to: the upper of the two that meet, and the side of it the edge is on. */
function ownerOf(leftArea: number, rightArea: number): { readonly area: number; readonly side: 'left' | 'right' } {
  const leftIsUpper = leftArea !== 0 && (rightArea === 0 || leftArea < rightArea);
  return leftIsUpper ? { area: leftArea, side: 'right' } : { area: rightArea, side: 'left' };
}

/** A line that moves by more ends than this in one pass is level there: it has no place in x to be compared with. */
const CORNER_ENDS = 4;

export interface ChartFidelity {
  readonly edges: readonly EdgeError[];
  readonly areas: readonly ShapeArea[];
}

/**
 * How the stepped chart stands to the drawing. At the middle of every pass: the distance in x from each boundary of the
 * chart to the drawn line between the same two yarns, and what is left of it after half an end and what the line runs in
 * one turn; that should come to 0. And the area each shape shows in the drawing against the area woven.
 * @param measured what stands on the loom already, where the rest was planned anew above it.
 */
export function chartFidelity(
  piece: Piece,
  stepped: SteppedChart,
  measured: MeasuredCloth | null = null,
): ChartFidelity {
  const { chart, shared } = stepped;
  const grid = { ...clothGridOf(piece, measured), passes: chart.passes };
  const drawn = drawnShapes(piece, grid);
  const indexOf = (id: string) => piece.yarns.findIndex((yarn) => yarn.id === id);
  const yarns = [indexOf(piece.cloth.ground), ...piece.shapes.map((shape) => indexOf(shape.yarn))];
  const columns = sampleColumns(grid);
  // Where a level edge runs through the very middle of a pass, it falls the way it fell when the cells were sampled.
  const heights = sampleRows(grid);
  const spans = Array.from({ length: grid.passes }, (_, pass) =>
    pass < grid.header || pass >= grid.passes - grid.footer ? [] : visibleSpansAt(drawn, heights[pass]!),
  );
  // All that is drawn, and what is left of it without slivers that no end catches.
  const lines = spans.map((row) => changesBetween(row, yarns));
  const middle = (grid.ends - 1) / 2;
  const wideLines = spans.map((row, pass) => {
    // An edge through the very middle of the middle end: its place is a hair to the side that has the end.
    const area = stepped.drawnAreas[pass * grid.ends + middle];
    const hasIt = columns[middle] === 0 ? row.find((span) => span.area === area && span.to === 0) : undefined;
    const ends = hasIt === undefined ? columns : columns.with(middle, Math.max(hasIt.from, -grid.pitch / 2) / 2);
    return changesBetween(wideSpans(row, ends), yarns);
  });
  const worst = new Map<
    string,
    { area: number; side: 'left' | 'right'; largest: number; at: number; excess: number }
  >();
  for (let pass = grid.header; pass < grid.passes - grid.footer; pass++) {
    const base = pass * grid.ends;
    for (let end = 1; end < grid.ends; end++) {
      const leftArea = chart.areas[base + end - 1]!;
      const rightArea = chart.areas[base + end]!;
      // Two areas in one yarn are woven as one: there is no edge between them to stray.
      const left = chart.cells[base + end - 1]!;
      const right = chart.cells[base + end]!;
      if (leftArea === rightArea || left === right || rightArea === HEADER_AREA) continue;
      const x = drawn.left + end * grid.pitch;
      const wide = distancesToLine(wideLines, pass, left, right, x);
      const any = distancesToLine(lines, pass, left, right, x);
      const here = Math.min(wide.here, any.here);
      const inTurn = Math.min(wide.inTurn, any.inTurn);
      const owner = ownerOf(leftArea, rightArea);
      const key = `${owner.area} ${owner.side}`;
      const entry = worst.get(key) ?? { ...owner, largest: 0, at: 0, excess: 0 };
      // No line between these yarns lies here, or only another one far off: the edge has run past a corner.
      const pastCorner = here - inTurn > CORNER_ENDS * grid.pitch;
      if (!pastCorner && here > entry.largest) {
        entry.largest = here;
        entry.at = passY(grid, pass);
      }
      // An end shared by both wefts is an end beyond the line by intent, on every second turn.
      const byIntent = shared[base + end] === 1 || shared[base + end - 1] === 1 ? grid.pitch : 0;
      entry.excess = Math.max(entry.excess, inTurn - grid.pitch / 2 - byIntent);
      worst.set(key, entry);
    }
  }
  const edges = [...worst.values()]
    .sort((one, other) => one.area - other.area || (one.side < other.side ? -1 : 1))
    .map(
      (entry): EdgeError => ({
        shape: piece.shapes[entry.area - 1]!.id,
        side: entry.side,
        largestMm: entry.largest,
        largestAtMm: entry.at,
        excessMm: entry.excess < 1e-4 ? 0 : entry.excess,
      }),
    );
  return { edges, areas: keptAreas(piece, stepped, grid.passHeight) };
}
