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
  /** How far the two spans that meet there reach. */
  readonly leftFrom: number;
  readonly rightTo: number;
}

function changesBetween(spans: readonly VisibleSpan[], yarns: readonly number[]): readonly DrawnChange[] {
  const changes: DrawnChange[] = [];
  const yarnAt = (at: number): number => yarns[spans[at]!.area]!;
  for (let at = 0, began = 0; at + 1 < spans.length; at++) {
    if (yarnAt(at) === yarnAt(at + 1)) continue;
    let last = at + 1;
    while (last + 1 < spans.length && yarnAt(last + 1) === yarnAt(at + 1)) last++;
    changes.push({
      from: spans[at]!.to,
      to: spans[at + 1]!.from,
      left: yarnAt(at),
      right: yarnAt(at + 1),
      leftFrom: spans[began]!.from,
      rightTo: spans[last]!.to,
    });
    began = at + 1;
  }
  return changes;
}

/** The spans wide enough to hold an end's middle. @param ends middles of the ends, mm, rising. */
function wideSpans(spans: readonly VisibleSpan[], ends: Float64Array): readonly VisibleSpan[] {
  let end = 0;
  return spans.filter(({ from, to }) => {
    while (end < ends.length && ends[end]! < from) end++;
    return end < ends.length && ends[end]! < to;
  });
}

/** How far x lies from a change, mm; 0 within a sliver. */
const distance = (change: DrawnChange, x: number): number => Math.max(0, change.from - x, x - change.to);

/** The one nearest to x; null where there is none. */
function nearest(changes: readonly DrawnChange[], x: number): DrawnChange | null {
  let found: DrawnChange | null = null;
  for (const change of changes) if (found === null || distance(change, x) < distance(found, x)) found = change;
  return found;
}

/** Whether two changes on neighbouring passes are one line: the same two spans meet at both. */
const goesOn = (one: DrawnChange, other: DrawnChange): boolean =>
  Math.max(one.leftFrom, other.leftFrom) < Math.min(one.from, other.from) &&
  Math.max(one.to, other.to) < Math.min(one.rightTo, other.rightTo);

/** A turn is two passes. */
const TURN = 2;

/**
 * How far x lies from the drawn line between two yarns at a pass, and from all that the line runs through in one turn
 * below and above, mm. Infinite where no such line is drawn.
 */
function distancesToLine(
  lines: readonly (readonly DrawnChange[])[],
  pass: number,
  left: number,
  right: number,
  x: number,
): { readonly here: number; readonly inTurn: number } {
  const between = (row: number) => (lines[row] ?? []).filter((line) => line.left === left && line.right === right);
  const at = nearest(between(pass), x);
  const here = at === null ? Number.POSITIVE_INFINITY : distance(at, x);
  let inTurn = here;
  for (const way of [-1, 1]) {
    // The line on this pass, and one that ends within the turn or begins in it.
    for (let begins = 0; begins <= TURN; begins++) {
      let line = begins === 0 ? at : nearest(between(pass + way * begins), x);
      if (line === null) continue;
      let { from, to } = line;
      for (let away = begins; ; ) {
        inTurn = Math.min(inTurn, Math.max(0, from - x, x - to));
        away++;
        const last: DrawnChange = line;
        if (away > TURN) break;
        line = nearest(
          between(pass + way * away).filter((next) => goesOn(last, next)),
          (last.from + last.to) / 2,
        );
        if (line === null) break;
        from = Math.min(from, line.from);
        to = Math.max(to, line.to);
      }
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
  // All that is drawn, and what is left of it without slivers that no end catches.
  const lines: (readonly DrawnChange[])[] = [];
  const wideLines: (readonly DrawnChange[])[] = [];
  const drawnArea = new Float64Array(piece.shapes.length + 1);
  for (let pass = 0; pass < grid.passes; pass++) {
    const body = pass >= grid.header && pass < grid.passes - grid.footer;
    const spans = body ? visibleSpansAt(drawn, passY(grid, pass)) : [];
    for (const span of spans) drawnArea[span.area]! += (span.to - span.from) * grid.passHeight;
    lines.push(changesBetween(spans, yarns));
    wideLines.push(changesBetween(wideSpans(spans, columns), yarns));
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
      const wide = distancesToLine(wideLines, pass, left, right, x);
      const any = distancesToLine(lines, pass, left, right, x);
      const here = Math.min(wide.here, any.here);
      const inTurn = Math.min(wide.inTurn, any.inTurn);
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
