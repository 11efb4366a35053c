import type { FlatLoom } from './flatLoom.ts';
import type { LoomCell } from './loomCells.ts';

/** How far a cell of one flat loom lies aside in another, along the direction that its structure tells. */
export interface CellShift {
  readonly cell: LoomCell;
  /** Unit direction on the loom, and the shift and its standard uncertainty along it, mm. */
  readonly ux: number;
  readonly uy: number;
  readonly shift: number;
  readonly sigma: number;
  /** Correlation at the best place. */
  readonly likeness: number;
  /** How much liker that place is than any other, in standard uncertainties of a correlation. */
  readonly distinct: number;
}

/** Neighbouring pixels err alike: so many of them count as one. */
const ALIKE_PIXELS = 6;
/** No place is told better than this, px. */
const FLOOR_PX = 0.08;
/** A place may be unsure to this along a direction and still count, mm. */
const MOST_UNSURE = 0.6;
/** Beyond this from the best place another place is another place, mm. */
const ELSEWHERE = 1.2;

/**
 * Looks for a cell near where it should lie, by normalised correlation, then to a fraction of a pixel by a parabola.
 * Grain tells a place across its lines only: the uncertainty along each direction follows from the cell's own slopes
 * (least squares of a shift: residual variance times the inverse of the summed squared slopes).
 * @param reach how far it may lie aside, mm. @param elsewhere how far around it is looked for others like it, mm.
 * @returns one shift for each of the two directions that is told, none where it isn't seen.
 */
export function cellShifts(
  before: FlatLoom,
  now: FlatLoom,
  cell: LoomCell,
  reach: number,
  elsewhere: number,
): CellShift[] {
  const { pxPerMm, left, top, width, height } = before.grid;
  const x0 = Math.ceil((cell.x - cell.halfWidth - left) * pxPerMm);
  const x1 = Math.floor((cell.x + cell.halfWidth - left) * pxPerMm);
  const y0 = Math.ceil((top - cell.y - cell.halfHeight) * pxPerMm);
  const y1 = Math.floor((top - cell.y + cell.halfHeight) * pxPerMm);
  if (x0 < 1 || y0 < 1 || x1 > width - 2 || y1 > height - 2) return [];
  const w = x1 - x0 + 1;
  const h = y1 - y0 + 1;
  const n = w * h;
  const template = new Float32Array(n);
  let mean = 0;
  for (let y = 0; y < h; y++) {
    for (let x = 0; x < w; x++) {
      const at = (y0 + y) * width + x0 + x;
      if (before.seen[at] === 0) return [];
      template[y * w + x] = before.light.data[at]!;
      mean += before.light.data[at]! / n;
    }
  }
  let square = 0;
  let [gxx, gxy, gyy] = [0, 0, 0];
  const data = before.light.data;
  for (let y = 0; y < h; y++) {
    for (let x = 0; x < w; x++) {
      template[y * w + x]! -= mean;
      square += template[y * w + x]! ** 2;
      const at = (y0 + y) * width + x0 + x;
      const gx = (data[at + 1]! - data[at - 1]!) / 2;
      const gy = (data[at + width]! - data[at - width]!) / 2;
      gxx += gx * gx;
      gxy += gx * gy;
      gyy += gy * gy;
    }
  }
  if (!(square > 0)) return [];
  const far = Math.round(Math.max(reach, elsewhere) * pxPerMm);
  const near = Math.round(reach * pxPerMm);
  const side = 2 * far + 1;
  const likeness = new Float32Array(side * side).fill(Number.NaN);
  for (let dy = -far; dy <= far; dy++) {
    for (let dx = -far; dx <= far; dx++) {
      // Farther out every other place is enough: no peak is narrower.
      if (Math.max(Math.abs(dx), Math.abs(dy)) > near + 1 && ((dx | dy) & 1) === 1) continue;
      likeness[(dy + far) * side + dx + far] = correlation(now, template, square, x0 + dx, y0 + dy, w, h);
    }
  }
  let best = -1;
  for (let dy = -near; dy <= near; dy++) {
    for (let dx = -near; dx <= near; dx++) {
      const at = (dy + far) * side + dx + far;
      if (likeness[at]! > (best < 0 ? -1 : likeness[best]!)) best = at;
    }
  }
  if (best < 0) return [];
  const bx = (best % side) - far;
  const by = Math.floor(best / side) - far;
  const most = likeness[best]!;
  // At the border of what was looked at there is no peak.
  if (most <= 0 || Math.abs(bx) === near || Math.abs(by) === near) return [];
  const [fx, fy] = peakBeside(likeness, best, side);
  const noise = ((1 - most * most) / (most * most)) * (square / n) * ALIKE_PIXELS;
  const middle = (gxx + gyy) / 2;
  const half = Math.hypot((gxx - gyy) / 2, gxy);
  const turn = 0.5 * Math.atan2(2 * gxy, gxx - gyy);
  const out: CellShift[] = [];
  for (const [strength, angle] of [
    [middle + half, turn],
    [middle - half, turn + Math.PI / 2],
  ] as const) {
    const sigma = Math.hypot(Math.sqrt(noise / Math.max(1e-9, strength)), FLOOR_PX) / pxPerMm;
    if (!(sigma < MOST_UNSURE)) continue;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const distinct = distinctness(
      likeness,
      side,
      far,
      best,
      n,
      (dx, dy) => Math.abs(c * dx + s * dy) / pxPerMm > ELSEWHERE,
    );
    // Rows run down the picture, y up the loom.
    const shift = (c * (bx + fx) + s * (by + fy)) / pxPerMm;
    out.push({ cell, ux: c, uy: -s, shift, sigma, likeness: most, distinct });
  }
  return out;
}

/** Normalised correlation of a template with a window; NaN where the window isn't wholly seen. */
function correlation(
  { light, seen }: FlatLoom,
  template: Float32Array,
  square: number,
  x0: number,
  y0: number,
  w: number,
  h: number,
): number {
  const { width, height, data } = light;
  if (x0 < 0 || y0 < 0 || x0 + w > width || y0 + h > height) return Number.NaN;
  const corners = [
    y0 * width + x0,
    y0 * width + x0 + w - 1,
    (y0 + h - 1) * width + x0,
    (y0 + h) * width + x0 + w - width - 1,
  ];
  for (const at of corners) if (seen[at] === 0) return Number.NaN;
  let product = 0;
  let sum = 0;
  let squares = 0;
  for (let y = 0; y < h; y++) {
    const at = (y0 + y) * width + x0;
    for (let x = 0; x < w; x++) {
      const value = data[at + x]!;
      product += value * template[y * w + x]!;
      sum += value;
      squares += value * value;
    }
  }
  const variance = squares - (sum * sum) / (w * h);
  return variance > 1e-9 ? product / Math.sqrt(variance * square) : 0;
}

/** Where between pixels a parabola through its neighbours has the peak, px. */
function peakBeside(likeness: Float32Array, best: number, side: number): readonly [number, number] {
  const along = (step: number): number => {
    const [a, b, c] = [likeness[best - step]!, likeness[best]!, likeness[best + step]!];
    const bend = a - 2 * b + c;
    return bend < -1e-9 ? Math.max(-0.5, Math.min(0.5, (a - c) / (2 * bend))) : 0;
  };
  return [along(1), along(side)];
}

/**
 * By how many standard uncertainties the best place is liker than the likest other: that of a correlation is
 * (1 − r²) / √n over n independent pixels (Fisher 1915).
 */
function distinctness(
  likeness: Float32Array,
  side: number,
  far: number,
  best: number,
  pixels: number,
  other: (dx: number, dy: number) => boolean,
): number {
  const bx = (best % side) - far;
  const by = Math.floor(best / side) - far;
  let most = Number.NaN;
  for (let dy = -far; dy <= far; dy++) {
    for (let dx = -far; dx <= far; dx++) {
      const value = likeness[(dy + far) * side + dx + far]!;
      if (Number.isNaN(value) || !other(dx - bx, dy - by)) continue;
      most = Number.isNaN(most) ? value : Math.max(most, value);
    }
  }
  if (Number.isNaN(most)) return 0;
  const unsure = Math.hypot(1 - likeness[best]! ** 2, 1 - most ** 2) / Math.sqrt(pixels / ALIKE_PIXELS);
  return (likeness[best]! - most) / Math.max(1e-6, unsure);
}
