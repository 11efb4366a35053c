import { outlinesOf } from '../../../core/cartoon/outline.ts';
import type { LoomReading } from '../../../core/model/check.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { median } from '../../../core/photo/statistics.ts';
import { stringCourse } from '../../../core/report/stringCourse.ts';
import type { PlannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import type { PlainPoint } from './plainPoint.ts';

/** Cloth millimetres to a place on the drawing. */
export type Project = (x: number, y: number) => PlainPoint;

const text = ({ x, y }: PlainPoint): string => `${x.toFixed(2)} ${y.toFixed(2)}`;

/** A line through cloth points, with extra ones between so that it bends with the lens where the drawing needs it. */
function pathThrough(points: readonly PlainPoint[], project: Project, closed = false): string {
  if (points.length < 2) return '';
  return `M${points.map((point) => text(project(point.x, point.y))).join('L')}${closed ? 'Z' : ''}`;
}

function ringPath(ring: Float64Array, project: Project): string {
  const points: PlainPoint[] = [];
  for (let at = 0; at < ring.length; at += 2) points.push({ x: ring[at]!, y: ring[at + 1]! });
  return pathThrough(points, project, true);
}

/** Steps along the planned outline, mm: fine enough that a bent edge looks bent. */
const STEP = 10;

/** The planned cloth: base, both selvedges and top. */
export function plannedOutline(edges: PlannedSelvedges, height: number, project: Project): string {
  const points: PlainPoint[] = [];
  const steps = Math.max(1, Math.round(height / STEP));
  const across = Math.max(1, Math.round((edges.right - edges.left) / STEP));
  for (let at = 0; at <= steps; at++) points.push({ x: edges.left, y: (height * at) / steps });
  for (let at = 1; at <= across; at++) {
    points.push({ x: edges.left + ((edges.right - edges.left) * at) / across, y: height });
  }
  for (let at = 1; at <= steps; at++) points.push({ x: edges.right, y: height - (height * at) / steps });
  return pathThrough(points, project);
}

/** Every shape's drawn edge, hidden ones left out. */
export function plannedShapes(piece: Piece, edges: PlannedSelvedges, project: Project): string {
  const box = { left: edges.left, right: edges.right, bottom: 0, top: piece.cloth.height };
  return piece.shapes
    .filter((shape) => !shape.hidden)
    .flatMap((shape) => outlinesOf(shape, box))
    .flatMap((outline) => outline.rings.map((ring) => ringPath(ring, project)))
    .join('');
}

/** Runs of neighbouring rows that were seen: a gap is left open, never bridged. */
export function seenRuns<Row, Seen>(rows: readonly Row[], see: (row: Row) => Seen | null): Seen[][] {
  const runs: Seen[][] = [];
  let run: Seen[] = [];
  for (const row of rows) {
    const seen = see(row);
    if (seen !== null) run.push(seen);
    else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  }
  if (run.length > 0) runs.push(run);
  return runs;
}

/** Height, mm, by which a selvedge may stop short of the fell and still belong to its corner. */
const CORNER = 8;

/**
 * The measured cloth: both selvedges by height, and the fell end by end as level steps half a pitch to each side. Where
 * a selvedge reaches the fell of its outer end, the two meet in the corner.
 */
export function measuredCloth(reading: LoomReading, halfEnd: number, project: Project): string {
  const edges = { left: sideRuns(reading, 'left'), right: sideRuns(reading, 'right') };
  const fells = seenRuns(reading.ends, (end) =>
    end.fell === null || end.xAtFell === null ? null : { index: end.index, x: end.xAtFell.value, y: end.fell.value },
  ).map((run) => ({
    first: run[0]!.index,
    last: run.at(-1)!.index,
    points: run.flatMap(({ x, y }) => [
      { x: x - halfEnd, y },
      { x: x + halfEnd, y },
    ]),
  }));
  for (const fell of fells) {
    if (fell.first === 0) corner(edges.left.at(-1), fell.points[0], fell.points);
    if (fell.last === reading.ends.length - 1) corner(edges.right.at(-1), fell.points.at(-1), fell.points);
  }
  return [...edges.left, ...edges.right, ...fells.map((fell) => fell.points)]
    .map((run) => pathThrough(run, project))
    .join('');
}

function sideRuns(reading: LoomReading, side: 'left' | 'right'): PlainPoint[][] {
  return seenRuns(reading.selvedge, (row) => {
    const at = row[side];
    return at === null ? null : { x: at.value, y: row.y };
  });
}

/** Carries the selvedge up to the level of the fell, and the fell out to the selvedge. */
function corner(edge: PlainPoint[] | undefined, end: PlainPoint | undefined, fell: PlainPoint[]): void {
  const top = edge?.at(-1);
  if (edge === undefined || top === undefined || end === undefined || Math.abs(end.y - top.y) > CORNER) return;
  const meeting = { x: top.x, y: end.y };
  fell[fell.indexOf(end)] = meeting;
  edge.push(meeting);
}

/** Areas between a planned and a measured selvedge: `short` where the cloth lies inside, `past` where outside. */
export function differences(
  reading: LoomReading,
  edges: PlannedSelvedges,
  project: Project,
): { readonly short: string; readonly past: string } {
  const paths = { short: '', past: '' };
  for (const side of ['left', 'right'] as const) {
    const planned = edges[side];
    const outward = side === 'left' ? -1 : 1;
    const runs = seenRuns(reading.selvedge, (row) => {
      const at = row[side];
      return at === null ? null : { y: row.y, x: at.value, out: (at.value - planned) * outward };
    });
    for (const run of runs) {
      let start = 0;
      for (let at = 1; at <= run.length; at++) {
        if (at < run.length && run[at]!.out >= 0 === run[start]!.out >= 0) continue;
        const part = run.slice(start, Math.min(run.length, at + 1));
        const back = [...part].reverse().map(({ y }) => ({ x: planned, y }));
        if (part.length > 1)
          paths[run[start]!.out < 0 ? 'short' : 'past'] += pathThrough([...part, ...back], project, true);
        start = at;
      }
    }
  }
  return paths;
}

/** Bare strings of these ends as they were measured; of all ends when none are named. */
export function measuredStrings(
  reading: LoomReading,
  topY: number,
  project: Project,
  which?: readonly number[],
): string {
  return reading.ends
    .filter(({ index }) => which === undefined || which.includes(index))
    .map((end) => stringCourse(end, reading.ends, topY))
    .map((course) => (course.length === 0 ? '' : pathThrough(course, project)))
    .join('');
}

/** The same strings as they are planned: straight from the fell, or from that of the others, to their own notch. */
export function plannedStrings(reading: LoomReading, piece: Piece, project: Project, which: readonly number[]): string {
  const topY = piece.loom.openingHeight - piece.cloth.baseAboveBottomBar;
  const fells = reading.ends.flatMap((end) => (end.fell === null ? [] : [end.fell.value]));
  return reading.ends
    .filter(({ index }) => fells.length > 0 && which.includes(index))
    .map(({ index, fell, xAtFell }) => {
      const notch = (index - (piece.warp.ends - 1) / 2) * piece.loom.notchPitch;
      return pathThrough(
        [
          { x: xAtFell?.value ?? notch, y: fell?.value ?? median(fells) },
          { x: notch, y: topY },
        ],
        project,
      );
    })
    .join('');
}

/** Ribs: where each end runs inside the cloth. */
export function measuredRibs(reading: LoomReading, project: Project): string {
  const ends = Math.max(0, ...reading.ribs.map((row) => row.x.length));
  let path = '';
  for (let end = 0; end < ends; end++) {
    const runs = seenRuns(reading.ribs, (row) => {
      const at = row.x[end];
      return at == null ? null : { x: at.value, y: row.y };
    });
    path += runs.map((run) => pathThrough(run, project)).join('');
  }
  return path;
}
