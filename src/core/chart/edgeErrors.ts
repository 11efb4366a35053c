import type { Piece } from '../model/piece.ts';
import { type Chart, type EdgeError, HEADER_AREA, type ShapeArea } from '../model/plan.ts';
import { boundaryBetween } from './boundaryKinds.ts';
import { clothGridOf, type MeasuredCloth, passY } from './clothGrid.ts';
import { drawnShapes, type VisibleSpan, visibleSpansAt } from './visibleSpans.ts';

/** Which shape an edge belongs to: the upper of the two that meet, and the side of it the edge is on. */
function ownerOf(leftArea: number, rightArea: number): { readonly area: number; readonly side: 'left' | 'right' } {
  const leftIsUpper = leftArea !== 0 && (rightArea === 0 || leftArea < rightArea);
  return leftIsUpper ? { area: leftArea, side: 'right' } : { area: rightArea, side: 'left' };
}

/** Where the drawing changes yarn along a level line. */
interface DrawnChange {
  readonly x: number;
  readonly left: number;
  readonly right: number;
}

function changesOf(spans: readonly VisibleSpan[], yarns: readonly number[]): readonly DrawnChange[] {
  const changes: DrawnChange[] = [];
  for (let at = 0; at + 1 < spans.length; at++) {
    const left = yarns[spans[at]!.area]!;
    const right = yarns[spans[at + 1]!.area]!;
    if (left !== right) changes.push({ x: spans[at]!.to, left, right });
  }
  return changes;
}

/** The change from one yarn to another nearest to x; NaN where there is none at this height. */
function nearest(changes: readonly DrawnChange[] | undefined, left: number, right: number, x: number): number {
  let found = Number.NaN;
  for (const change of changes ?? []) {
    if (change.left !== left || change.right !== right) continue;
    if (Number.isNaN(found) || Math.abs(change.x - x) < Math.abs(found - x)) found = change.x;
  }
  return found;
}

/** How far x lies outside the stretch between two places, or from the one that is known. */
function awayFrom(x: number, one: number, other: number): number {
  if (Number.isNaN(one)) return Number.POSITIVE_INFINITY;
  const end = Number.isNaN(other) ? one : other;
  return Math.max(0, Math.min(one, end) - x, x - Math.max(one, end));
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
export function chartFidelity(piece: Piece, chart: Chart, measured: MeasuredCloth | null = null): ChartFidelity {
  const grid = { ...clothGridOf(piece, measured), passes: chart.passes };
  const drawn = drawnShapes(piece, grid);
  const indexOf = (id: string) => piece.yarns.findIndex((yarn) => yarn.id === id);
  const yarns = [indexOf(piece.cloth.ground), ...piece.shapes.map((shape) => indexOf(shape.yarn))];
  const lines: (readonly DrawnChange[])[] = [];
  const drawnArea = new Float64Array(piece.shapes.length + 1);
  for (let pass = 0; pass < grid.passes; pass++) {
    const body = pass >= grid.header && pass < grid.passes - grid.footer;
    const spans = body ? visibleSpansAt(drawn, passY(grid, pass)) : [];
    for (const span of spans) drawnArea[span.area]! += (span.to - span.from) * grid.passHeight;
    lines.push(changesOf(spans, yarns));
  }
  const worst = new Map<
    string,
    { area: number; side: 'left' | 'right'; largest: number; at: number; excess: number }
  >();
  const woven = new Float64Array(piece.shapes.length + 1);
  const boundaryRows = new Uint32Array(piece.shapes.length + 1);
  for (let pass = grid.header; pass < grid.passes - grid.footer; pass++) {
    const base = pass * grid.ends;
    const touched = new Set<number>();
    for (let end = 0; end < grid.ends; end++) {
      const area = chart.areas[base + end]!;
      if (area === HEADER_AREA) continue;
      woven[area]! += grid.pitch * grid.passHeight;
      if (end === 0 || chart.areas[base + end - 1] === area) continue;
      touched.add(area).add(chart.areas[base + end - 1]!);
      // Two areas in one yarn are woven as one: there is no edge between them to stray.
      const left = chart.cells[base + end - 1]!;
      const right = chart.cells[base + end]!;
      if (left === right) continue;
      const x = drawn.left + end * grid.pitch;
      // Within one turn the line runs from the pass below to the pass above: its nearest place there counts.
      const line = nearest(lines[pass], left, right, x);
      const here = Math.abs(line - x);
      const inTurn = Math.min(
        here,
        awayFrom(x, line, nearest(lines[pass - 1], left, right, line)),
        awayFrom(x, line, nearest(lines[pass + 1], left, right, line)),
        awayFrom(x, nearest(lines[pass - 1], left, right, x), Number.NaN),
        awayFrom(x, nearest(lines[pass + 1], left, right, x), Number.NaN),
      );
      // No line between these yarns ends here, or only another one far off: the edge has run past a corner.
      if (Number.isNaN(here) || here - inTurn > CORNER_ENDS * grid.pitch) continue;
      const owner = ownerOf(chart.areas[base + end - 1]!, area);
      const key = `${owner.area} ${owner.side}`;
      const entry = worst.get(key) ?? { ...owner, largest: 0, at: 0, excess: 0 };
      if (here > entry.largest) {
        entry.largest = here;
        entry.at = passY(grid, pass);
      }
      // An end shared by both wefts is an end beyond the line by intent, on every second turn.
      const boundary = boundaryBetween(piece, chart.areas[base + end - 1]!, area);
      const shared = boundary === 'shared-end' || boundary === 'dovetailed' ? grid.pitch : 0;
      entry.excess = Math.max(entry.excess, inTurn - grid.pitch / 2 - shared);
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
        largestAtMm: entry.at,
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
