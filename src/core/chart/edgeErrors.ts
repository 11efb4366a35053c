import type { Piece } from '../model/piece.ts';
import { type Chart, type EdgeError, HEADER_AREA, type ShapeArea } from '../model/plan.ts';
import { boundaryBetween } from './boundaryKinds.ts';
import { clothGridOf, type MeasuredCloth, passY } from './clothGrid.ts';
import { sampleColumns } from './sampleAreas.ts';
import { drawnShapes, type VisibleSpan, visibleSpansAt } from './visibleSpans.ts';

/** Which shape an edge belongs to: the upper of the two that meet, and the side of it the edge is on. */
function ownerOf(leftArea: number, rightArea: number): { readonly area: number; readonly side: 'left' | 'right' } {
  const leftIsUpper = leftArea !== 0 && (rightArea === 0 || leftArea < rightArea);
  return leftIsUpper ? { area: leftArea, side: 'right' } : { area: rightArea, side: 'left' };
}

/** Where the drawing changes yarn along a level line: at one place, or over a sliver too thin to be woven there. */
interface DrawnChange {
  readonly from: number;
  readonly to: number;
  readonly left: number;
  readonly right: number;
}

/** The changes of yarn along a pass: all that are drawn, and those between spans wide enough to hold an end's middle. */
interface PassChanges {
  readonly drawn: readonly DrawnChange[];
  readonly woven: readonly DrawnChange[];
}

function changesBetween(spans: readonly VisibleSpan[], yarns: readonly number[]): readonly DrawnChange[] {
  const changes: DrawnChange[] = [];
  for (let at = 0; at + 1 < spans.length; at++) {
    const left = yarns[spans[at]!.area]!;
    const right = yarns[spans[at + 1]!.area]!;
    if (left !== right) changes.push({ from: spans[at]!.to, to: spans[at + 1]!.from, left, right });
  }
  return changes;
}

/** @param ends middles of the ends, mm, rising. */
function changesOf(spans: readonly VisibleSpan[], yarns: readonly number[], ends: Float64Array): PassChanges {
  let end = 0;
  const wide = spans.filter(({ from, to }) => {
    while (end < ends.length && ends[end]! < from) end++;
    return end < ends.length && ends[end]! < to;
  });
  return { drawn: changesBetween(spans, yarns), woven: changesBetween(wide, yarns) };
}

/** How far x lies from a change, mm; 0 within a sliver. */
const distance = (change: DrawnChange, x: number): number => Math.max(0, change.from - x, x - change.to);

/** The change from one yarn to another nearest to x; null where there is none at this height. */
function nearest(
  changes: readonly DrawnChange[] | undefined,
  left: number,
  right: number,
  x: number,
): DrawnChange | null {
  let found: DrawnChange | null = null;
  for (const change of changes ?? []) {
    if (change.left !== left || change.right !== right) continue;
    if (found === null || distance(change, x) < distance(found, x)) found = change;
  }
  return found;
}

/** A turn is two passes. */
const TURN = 2;

/**
 * How far x lies from the drawn line between two yarns, and from all that the line runs through in one turn below and
 * above a pass, mm. Infinite where no such line is drawn.
 */
function distancesToLine(
  lines: readonly PassChanges[],
  which: keyof PassChanges,
  pass: number,
  left: number,
  right: number,
  x: number,
): { readonly here: number; readonly inTurn: number } {
  const at = nearest(lines[pass]?.[which], left, right, x);
  const here = at === null ? Number.POSITIVE_INFINITY : distance(at, x);
  let inTurn = here;
  for (const way of [-1, 1]) {
    let from = at?.from ?? Number.POSITIVE_INFINITY;
    let to = at?.to ?? Number.NEGATIVE_INFINITY;
    let followed = at === null ? x : (from + to) / 2;
    for (let away = 1; away <= TURN; away++) {
      const row = lines[pass + way * away]?.[which];
      const next = nearest(row, left, right, followed);
      // A line that ends within the turn may begin anew nearer by.
      const anew = nearest(row, left, right, x);
      if (anew !== null) inTurn = Math.min(inTurn, distance(anew, x));
      if (next === null) break;
      from = Math.min(from, next.from);
      to = Math.max(to, next.to);
      followed = (next.from + next.to) / 2;
      inTurn = Math.min(inTurn, Math.max(0, from - x, x - to));
    }
  }
  return { here, inTurn };
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
  const columns = sampleColumns(grid);
  const lines: PassChanges[] = [];
  const drawnArea = new Float64Array(piece.shapes.length + 1);
  for (let pass = 0; pass < grid.passes; pass++) {
    const body = pass >= grid.header && pass < grid.passes - grid.footer;
    const spans = body ? visibleSpansAt(drawn, passY(grid, pass)) : [];
    for (const span of spans) drawnArea[span.area]! += (span.to - span.from) * grid.passHeight;
    lines.push(changesOf(spans, yarns, columns));
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
      const drawnLine = distancesToLine(lines, 'drawn', pass, left, right, x);
      const wovenLine = distancesToLine(lines, 'woven', pass, left, right, x);
      const here = Math.min(drawnLine.here, wovenLine.here);
      const inTurn = Math.min(drawnLine.inTurn, wovenLine.inTurn);
      const owner = ownerOf(chart.areas[base + end - 1]!, area);
      const key = `${owner.area} ${owner.side}`;
      const entry = worst.get(key) ?? { ...owner, largest: 0, at: 0, excess: 0 };
      // No line between these yarns lies here, or only another one far off: the edge has run past a corner.
      const straight = here - inTurn <= CORNER_ENDS * grid.pitch;
      if (straight && here > entry.largest) {
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
