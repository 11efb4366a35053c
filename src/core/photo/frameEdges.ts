import { notchX } from './coarseCamera.ts';
import { halfEnd } from './coarseLoom.ts';
import { edgePoints, type PhotoEdgePoint } from './edgePoints.ts';
import { type EdgeProfile, edgeProfile, supportAt } from './edgeProfile.ts';
import type { Expected } from './expected.ts';
import type { ColourRaster } from './reduce.ts';

/** One straight edge of the wood: `inner` faces the opening, `outer` the table. */
export interface FrameEdge {
  readonly side: 'bottom' | 'top' | 'left' | 'right';
  readonly kind: 'inner' | 'outer';
  readonly points: readonly PhotoEdgePoint[];
  /** Share of the rows read that show it. */
  readonly support: number;
}

/** The frame's edges as seen under a camera. */
export interface FrameEdges {
  /** mm to add to the camera's aim along y so that both bars lie alike. */
  readonly shift: number;
  /** Likeness of the two bars, 0–1. */
  readonly likeness: number;
  readonly edges: readonly FrameEdge[];
}

type ToSmall = (x: number, y: number, z?: number) => { x: number; y: number };

const STEP = 0.25;
const INSIDE = 10;
/** From the opening outward, share of a bar: there the wood's colour is seen, clear of notches and of rounding. */
const ON_WOOD = 0.65;

/** Columns between the ends and beside the warp, where the bars' edges are not crossed by strings. */
function freeColumns(expected: Expected): number[] {
  const columns: number[] = [];
  const clear = Math.min(halfEnd(expected) + 0.4, 0.42 * expected.pitch);
  const half = 0.47 * expected.openingWidth;
  for (let x = -half; x <= half; x += 0.9) {
    const place = (x - notchX(expected, expected.firstNotch)) / expected.pitch;
    const beside = place < -0.5 || place > expected.ends - 0.5;
    if (beside || Math.abs(place - Math.round(place)) * expected.pitch > clear) columns.push(x);
  }
  return columns;
}

/**
 * Finds the edges of both bars and both rails. The bars are compared as mirror images of each other: what rounding,
 * shade and teeth do to the look of one they do to the other, so the middle between like edges is good even where no
 * edge is where it seems.
 * @param toSmall loom mm (z above the strings' plane) to pixels of `picture`.
 * @param reach how far the camera's y may be off, mm.
 */
export function frameEdges(
  picture: ColourRaster,
  factor: number,
  toSmall: ToSmall,
  expected: Expected,
  reach: number,
): FrameEdges {
  const columns = freeColumns(expected);
  const height = expected.openingHeight;
  const face = -expected.stringDiameter / 2;
  const outward = expected.bar + 6;
  const always = () => true;
  const below = (o: number, x: number) => toSmall(x, -o, face);
  const above = (o: number, x: number) => toSmall(x, height + o, face);
  const wood = ON_WOOD * expected.bar;
  const bottom = edgeProfile(picture, below, -INSIDE - reach, outward + reach, STEP, columns, always, wood);
  const top = edgeProfile(picture, above, -INSIDE - reach, outward + reach, STEP, columns, always, wood);
  let best = { shift: 0, score: -1 };
  for (let shift = -reach; shift <= reach; shift += STEP / 2) {
    const score = likeness(bottom, top, shift, expected.bar);
    if (score > best.score) best = { shift, score };
  }
  const { shift } = best;
  const rows: number[] = [];
  for (let y = 0.04 * height; y <= 0.96 * height; y += 2) rows.push(y);
  const half = expected.openingWidth / 2;
  const edges: FrameEdge[] = [];
  const add = (
    side: FrameEdge['side'],
    kind: FrameEdge['kind'],
    place: (value: number, row: number) => { x: number; y: number },
    at: number,
    span: number,
    lines: readonly number[],
  ) => {
    const onFace = side === 'left' || side === 'right' ? ON_WOOD * expected.rail : wood;
    const points = edgePoints(picture, factor, place, at, span, lines, kind === 'outer' ? onFace : null);
    edges.push({ side, kind, points, support: points.length / lines.length });
  };
  const inner = bothShow(bottom, top, shift, 0.6, 1.5);
  const outer = bothShow(bottom, top, shift, expected.bar - 0.4, 1.5);
  const wide = columns.filter((_, k) => k % 2 === 0);
  add('bottom', 'inner', below, inner - shift, 1.2, columns);
  add('top', 'inner', above, inner + shift, 1.2, columns);
  add('bottom', 'outer', below, outer - shift, 1.6, wide);
  add('top', 'outer', above, outer + shift, 1.6, wide);
  const left = (o: number, y: number) => toSmall(-half - o, y, face);
  const right = (o: number, y: number) => toSmall(half + o, y, face);
  add('left', 'outer', left, expected.rail - 0.4, 2.2, rows);
  add('right', 'outer', right, expected.rail - 0.4, 2.2, rows);
  add('left', 'inner', left, 0.4, 2.2, rows);
  add('right', 'inner', right, 0.4, 2.2, rows);
  return { shift: -shift, likeness: best.score, edges };
}

/** The place near `at` where both bars show an edge. */
function bothShow(bottom: EdgeProfile, top: EdgeProfile, shift: number, at: number, width: number): number {
  let best = at;
  let most = 0;
  for (let o = at - 2 * width; o <= at + 2 * width; o += STEP / 2) {
    const both =
      Math.sqrt(supportAt(bottom, o - shift) * supportAt(top, o + shift)) * Math.exp(-0.5 * ((o - at) / width) ** 2);
    if (both > most) {
      most = both;
      best = o;
    }
  }
  return best;
}

/** Correlation of the two profiles when the loom sits `shift` too high. */
function likeness(bottom: EdgeProfile, top: EdgeProfile, shift: number, bar: number): number {
  let both = 0;
  let a2 = 0;
  let b2 = 0;
  for (let o = -INSIDE; o <= bar + 6; o += STEP) {
    const a = supportAt(bottom, o - shift);
    const b = supportAt(top, o + shift);
    // The opening's side holds the cardboard, the cloth and the bars' inner walls: it counts less. The outer edge
    // stands alone and counts more.
    const weight = o < -1.5 ? 0.25 : Math.abs(o - bar) < 2 ? 2 : 1;
    both += weight * a * b;
    a2 += weight * a * a;
    b2 += weight * b * b;
  }
  return both / Math.sqrt(a2 * b2 + 1e-9);
}
