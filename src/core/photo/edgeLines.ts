import { alongColumns, slopeKernel } from './gaussian.ts';
import type { Raster } from './raster.ts';

/** Places where brightness or colour steps when going down a column. */
export interface EdgePoint {
  readonly x: number;
  readonly y: number;
  /** Step size, grey levels per pixel over the three channels. */
  readonly strength: number;
}

/** A gently bent line across the columns: y = at + slope (x − middle) + bend (x − middle)². */
export interface EdgeLine {
  readonly middle: number;
  readonly at: number;
  readonly slope: number;
  readonly bend: number;
  /** Share of the columns in which an edge lies on the line. */
  readonly support: number;
  /** The edge points that lie on it. */
  readonly points: readonly EdgePoint[];
}

export const edgeLineAt = (line: EdgeLine, x: number): number => {
  const dx = x - line.middle;
  return line.at + line.slope * dx + line.bend * dx * dx;
};

/** Edge points down every `every`-th column between `from` and `to`, sub-pixel, from three channels together. */
export function columnEdges(
  channels: readonly Raster[],
  from: number,
  to: number,
  every: number,
  sigma: number,
): EdgePoint[] {
  const { width, height } = channels[0]!;
  const start = Math.max(0, Math.ceil(from));
  const end = Math.min(width - 1, Math.floor(to));
  const columns = Math.max(0, Math.floor((end - start) / every) + 1);
  const energy = new Float32Array(columns * height);
  const slope = slopeKernel(sigma);
  for (const channel of channels) {
    const answer = alongColumns(columnMeans(channel, start, columns, every), slope).data;
    for (let i = 0; i < energy.length; i++) energy[i]! += answer[i]! * answer[i]!;
  }
  const points: EdgePoint[] = [];
  for (let column = 0; column < columns; column++) {
    const x = start + column * every;
    for (let y = 2; y < height - 2; y++) {
      const square = energy[y * columns + column]!;
      if (
        square < 0.64 ||
        square < energy[(y - 1) * columns + column]! ||
        square <= energy[(y + 1) * columns + column]!
      )
        continue;
      const here = Math.sqrt(square);
      const above = Math.sqrt(energy[(y - 1) * columns + column]!);
      const below = Math.sqrt(energy[(y + 1) * columns + column]!);
      const bend = above - 2 * here + below;
      points.push({ x, y: y + (bend < 0 ? (0.5 * (above - below)) / bend : 0), strength: here });
    }
  }
  return points;
}

/** Every `every`-th column from `start`, each the mean of itself and the columns up to the next. */
function columnMeans(channel: Raster, start: number, columns: number, every: number): Raster {
  const { width, height, data } = channel;
  const out = new Float32Array(columns * height);
  for (let y = 0; y < height; y++) {
    for (let column = 0; column < columns; column++) {
      let sum = 0;
      let count = 0;
      const x = start + column * every;
      for (let d = -(every >> 1); d <= every >> 1; d++) {
        if (x + d < 0 || x + d >= width) continue;
        sum += data[y * width + x + d]!;
        count++;
      }
      out[y * columns + column] = sum / count;
    }
  }
  return { width: columns, height, data: out };
}

/**
 * Long lines that cross the columns, strongest support first, found by voting over slope and height and then fitted.
 * @param steepest largest |slope|.
 */
export function edgeLines(
  points: readonly EdgePoint[],
  height: number,
  middle: number,
  columns: number,
  steepest: number,
  most: number,
): EdgeLine[] {
  const cell = 3;
  const bins = Math.ceil(height / cell) + 1;
  const slopeStep = 0.006;
  const slopes = Math.floor(steepest / slopeStep);
  const lines: EdgeLine[] = [];
  const votes: Float32Array[] = [];
  const xs = Float64Array.from(points, (point) => point.x);
  const ys = Float64Array.from(points, (point) => point.y);
  const shares = Float64Array.from(points, (point) => Math.min(1, 0.3 + point.strength / 12));
  const lastColumn = new Float32Array(bins);
  for (let k = -slopes; k <= slopes; k++) {
    const slope = k * slopeStep;
    const row = new Float32Array(bins);
    lastColumn.fill(-1);
    for (let p = 0; p < xs.length; p++) {
      const x = xs[p]!;
      const bin = Math.floor((ys[p]! - slope * (x - middle)) / cell);
      const share = shares[p]!;
      if (bin >= 0 && bin < bins && lastColumn[bin] !== x) {
        lastColumn[bin] = x;
        row[bin]! += share;
      }
      const next = bin + 1;
      if (next >= 0 && next < bins && lastColumn[next] !== x) {
        lastColumn[next] = x;
        row[next]! += share;
      }
    }
    votes.push(row);
  }
  // Where everything is full of edges (cloth, patterned ground) any slope finds support: only the excess counts.
  const usual = new Float32Array(bins);
  const all = new Float32Array(votes.length);
  for (let b = 0; b < bins; b++) {
    for (let k = 0; k < votes.length; k++) all[k] = votes[k]![b]!;
    all.sort();
    usual[b] = all[Math.floor(0.6 * all.length)]!;
  }
  const peaks: { k: number; b: number; votes: number }[] = [];
  for (let k = 0; k < votes.length; k++) {
    for (let b = 1; b < bins - 1; b++) {
      const here = votes[k]![b]!;
      if (here < 0.3 * columns) continue;
      let top = true;
      for (let dk = -1; dk <= 1 && top; dk++) {
        for (let db = -1; db <= 1; db++) {
          const other = votes[k + dk]?.[b + db] ?? 0;
          if (other > here || (other === here && (dk < 0 || (dk === 0 && db < 0)))) {
            top = false;
            break;
          }
        }
      }
      if (top && here - usual[b]! > 0.12 * columns) peaks.push({ k: k - slopes, b, votes: here - usual[b]! });
    }
  }
  peaks.sort((a, b) => b.votes - a.votes);
  const index = indexByHeight(points, height);
  for (const peak of peaks) {
    if (lines.length >= most) break;
    const line = fitEdgeLine(index, middle, columns, peak.b * cell, peak.k * slopeStep, 0, 4.5);
    if (!line) continue;
    const known = lines.some(
      (other) => Math.abs(other.at - line.at) < 2.5 && Math.abs(other.slope - line.slope) < 0.02,
    );
    if (!known) lines.push(line);
  }
  return lines.sort((a, b) => b.support - a.support);
}

/** Edge points column by column, so that a line meets only those near it. */
interface EdgeIndex {
  readonly along: (line: EdgeLine, reach: number) => Iterable<EdgePoint>;
}

function indexByHeight(points: readonly EdgePoint[], height: number): EdgeIndex {
  const cell = 8;
  const cells = Math.ceil(height / cell) + 1;
  const columns = new Map<number, EdgePoint[][]>();
  for (const point of points) {
    let column = columns.get(point.x);
    if (!column) {
      column = Array.from({ length: cells }, () => []);
      columns.set(point.x, column);
    }
    column[Math.floor(point.y / cell)]!.push(point);
  }
  return {
    *along(line, reach) {
      for (const [x, column] of columns) {
        const y = edgeLineAt(line, x);
        const last = Math.min(cells - 1, Math.floor((y + reach) / cell));
        for (let k = Math.max(0, Math.floor((y - reach) / cell)); k <= last; k++) yield* column[k]!;
      }
    },
  };
}

/** Fits the bent line to the edge points near it, the band narrowing as it settles. */
function fitEdgeLine(
  index: EdgeIndex,
  middle: number,
  columns: number,
  at: number,
  slope: number,
  bend: number,
  band: number,
): EdgeLine | null {
  let line: EdgeLine = { middle, at, slope, bend, support: 0, points: [] };
  let reach = band;
  for (let round = 0; round < 6; round++) {
    const nearest = new Map<number, EdgePoint>();
    for (const point of index.along(line, reach)) {
      const off = Math.abs(point.y - edgeLineAt(line, point.x));
      if (off > reach) continue;
      const known = nearest.get(point.x);
      if (!known || point.strength > known.strength) nearest.set(point.x, point);
    }
    const close = [...nearest.values()];
    if (close.length < 0.2 * columns) return null;
    const fitted = parabola(close, middle, round >= 2);
    line = { middle, ...fitted, support: close.length / columns, points: close };
    reach = Math.max(1.5, reach * 0.75);
  }
  return line;
}

/** Least squares with the bend pulled towards none. */
function parabola(
  points: readonly EdgePoint[],
  middle: number,
  withBend: boolean,
): { at: number; slope: number; bend: number } {
  let n = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let s4 = 0;
  let y0 = 0;
  let y1 = 0;
  let y2 = 0;
  const half = Math.max(1, ...points.map((point) => Math.abs(point.x - middle)));
  for (const point of points) {
    const u = (point.x - middle) / half;
    const w = Math.min(1, point.strength / 6);
    n += w;
    s1 += w * u;
    s2 += w * u * u;
    s3 += w * u * u * u;
    s4 += w * u * u * u * u;
    y0 += w * point.y;
    y1 += w * u * point.y;
    y2 += w * u * u * point.y;
  }
  if (!withBend) {
    const det = n * s2 - s1 * s1;
    if (Math.abs(det) < 1e-9) return { at: y0 / n, slope: 0, bend: 0 };
    return { at: (s2 * y0 - s1 * y1) / det, slope: (n * y1 - s1 * y0) / det / half, bend: 0 };
  }
  // Prior on the bend: sagitta about 4 px.
  const stiff = 0.02 * n;
  const [at, slope, bend] = solve3([n, s1, s2, s1, s2, s3, s2, s3, s4 + stiff], [y0, y1, y2]);
  return { at, slope: slope / half, bend: bend / (half * half) };
}

function solve3(m: readonly number[], v: readonly number[]): [number, number, number] {
  const [a, b, c, d, e, f, g, h, i] = m as [number, number, number, number, number, number, number, number, number];
  const [p, q, r] = v as [number, number, number];
  const det = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  return [
    (p * (e * i - f * h) - b * (q * i - f * r) + c * (q * h - e * r)) / det,
    (a * (q * i - f * r) - p * (d * i - f * g) + c * (d * r - q * g)) / det,
    (a * (e * r - q * h) - b * (d * r - q * g) + p * (d * h - e * g)) / det,
  ];
}
