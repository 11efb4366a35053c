import { notchX } from './coarseCamera.ts';
import type { Expected } from './coarseLoom.ts';
import { halfEnd } from './coarseLoom.ts';
import { type EdgeProfile, edgeProfile, supportAt } from './edgeProfile.ts';
import { type ColourRaster, enlargedCoordinate } from './reduce.ts';
import { sampleColour } from './sample.ts';

/** The bars as seen under a camera: how far the loom must move along y, and where the inner edges lie. */
export interface BarEdges {
  /** mm to add to every y of the camera. */
  readonly shift: number;
  /** How far outside the opening both inner edges are seen, mm, after the shift. */
  readonly outside: number;
  /** Likeness of the two bars, 0–1. */
  readonly likeness: number;
  readonly bottom: readonly { readonly px: number; readonly py: number }[];
  readonly top: readonly { readonly px: number; readonly py: number }[];
  readonly bottomSupport: number;
  readonly topSupport: number;
}

const STEP = 0.25;
const INSIDE = 10;

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
 * Compares the two bars as mirror images of each other: what rounding, shade and teeth do to the look of an edge they
 * do to both, so the middle between like edges is good even where neither edge is where it seems.
 * @param toSmall loom mm (z above the strings' plane) to pixels of `picture`.
 * @param reach how far the camera's y may be off, mm.
 */
export function barEdges(
  picture: ColourRaster,
  factor: number,
  toSmall: (x: number, y: number, z?: number) => { x: number; y: number },
  expected: Expected,
  reach: number,
): BarEdges | null {
  const columns = freeColumns(expected);
  const height = expected.openingHeight;
  const face = -expected.stringDiameter / 2;
  const outward = expected.bar + 6;
  const always = () => true;
  const margin = INSIDE + reach;
  const bottom = edgeProfile(picture, (o, x) => toSmall(x, -o, face), -margin, outward + reach, STEP, columns, always);
  const top = edgeProfile(
    picture,
    (o, x) => toSmall(x, height + o, face),
    -margin,
    outward + reach,
    STEP,
    columns,
    always,
  );
  let best = { shift: 0, score: -1 };
  for (let shift = -reach; shift <= reach; shift += STEP / 2) {
    const score = likeness(bottom, top, shift, -INSIDE, outward);
    if (score > best.score) best = { shift, score };
  }
  // The inner edge: what both bars show near where rounding puts it.
  let outside = 0;
  let edge = -1;
  for (let o = -2.2; o <= 3; o += STEP / 2) {
    const both =
      Math.sqrt(supportAt(bottom, o - best.shift) * supportAt(top, o + best.shift)) *
      Math.exp(-0.5 * ((o - 0.8) / 1.6) ** 2);
    if (both > edge) {
      edge = both;
      outside = o;
    }
  }
  if (edge <= 0.05) return null;
  const bottomPoints = edgePoints(picture, factor, (o, x) => toSmall(x, -o, face), outside - best.shift, columns);
  const topPoints = edgePoints(picture, factor, (o, x) => toSmall(x, height + o, face), outside + best.shift, columns);
  return {
    shift: -best.shift,
    outside,
    likeness: best.score,
    bottom: bottomPoints,
    top: topPoints,
    bottomSupport: bottomPoints.length / columns.length,
    topSupport: topPoints.length / columns.length,
  };
}

/** Correlation of the two profiles when the loom sits `shift` too high. */
function likeness(bottom: EdgeProfile, top: EdgeProfile, shift: number, from: number, to: number): number {
  let both = 0;
  let a2 = 0;
  let b2 = 0;
  for (let o = from; o <= to; o += STEP) {
    const a = supportAt(bottom, o - shift);
    const b = supportAt(top, o + shift);
    // The opening's side holds the cardboard, the cloth and the bars' inner walls: it counts less.
    const weight = o > -1.5 ? 1 : 0.25;
    both += weight * a * b;
    a2 += weight * a * a;
    b2 += weight * b * b;
  }
  return both / Math.sqrt(a2 * b2 + 1e-9);
}

/** Sub-pixel edges near one place, column by column, in photo px. */
function edgePoints(
  picture: ColourRaster,
  factor: number,
  place: (outward: number, x: number) => { x: number; y: number },
  at: number,
  columns: readonly number[],
): { px: number; py: number }[] {
  const reach = 1.3;
  const step = 0.2;
  const count = Math.round((2 * reach) / step) + 9;
  const from = at - reach - 4 * step;
  const colours = new Float64Array(3 * count);
  const points: { px: number; py: number }[] = [];
  for (const x of columns) {
    for (let k = 0; k < count; k++) {
      const p = place(from + k * step, x);
      sampleColour(picture, p.x, p.y, colours, 3 * k);
    }
    let best = -1;
    let most = 5;
    const strength: number[] = new Array(count).fill(0);
    for (let k = 4; k < count - 4; k++) {
      let sum = 0;
      for (let c = 0; c < 3; c++) {
        let rise = 0;
        for (let d = 1; d <= 4; d++) rise += colours[3 * (k + d) + c]! - colours[3 * (k - d) + c]!;
        sum += (rise / 4) ** 2;
      }
      strength[k] = Math.sqrt(sum);
      if (strength[k]! > most) {
        most = strength[k]!;
        best = k;
      }
    }
    if (best < 5 || best > count - 6) continue;
    const before = strength[best - 1]!;
    const after = strength[best + 1]!;
    const bend = before - 2 * most + after;
    const o = from + (best + (bend < 0 ? (0.5 * (before - after)) / bend : 0)) * step;
    const seen = place(o, x);
    points.push({ px: enlargedCoordinate(seen.x, factor), py: enlargedCoordinate(seen.y, factor) });
  }
  return points;
}
