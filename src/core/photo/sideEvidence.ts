import type { ClothFrame } from './clothFrame.ts';
import { nearestDistances, twoKinds } from './nearestClass.ts';
import type { SideStrip } from './sideStrip.ts';
import { boxMean } from './statistics.ts';

/** How many numbers describe one place beside the cloth: lightness, two hues, ripple up and down, height. */
const SIZE = 5;
const SAMPLES = 320;

/** One place in every `every` columns and rows is judged. */
export interface SideEvidence {
  readonly columns: number;
  readonly rows: number;
  readonly everyColumn: number;
  readonly everyRow: number;
  /** Above 0 cloth, below 0 outside. */
  readonly values: Float32Array;
}

/** Descriptions of the places of a strip, coarsely. */
export interface SideFeatures {
  readonly columns: number;
  readonly rows: number;
  readonly everyColumn: number;
  readonly everyRow: number;
  readonly values: Float32Array;
}

export function sideFeatures(strip: SideStrip, frame: ClothFrame): SideFeatures {
  const everyColumn = 2;
  const reach = Math.max(1, Math.round(frame.planPass / strip.yStep));
  const everyRow = Math.max(1, Math.round(0.8 * reach));
  const columns = Math.floor(strip.columns / everyColumn);
  const rows = Math.floor(strip.rows / everyRow);
  const values = new Float32Array(columns * rows * SIZE);
  const line = new Float32Array(strip.rows);
  for (let c = 0; c < columns; c++) {
    const k = c * everyColumn;
    const means: Float32Array[] = [];
    let squares: Float32Array = line;
    for (let channel = 0; channel < 3; channel++) {
      for (let r = 0; r < strip.rows; r++) line[r] = strip.colours[(r * strip.columns + k) * 3 + channel]!;
      means.push(boxMean(line, reach));
      if (channel === 0) {
        squares = boxMean(
          line.map((value) => value * value),
          reach,
        );
      }
    }
    for (let q = 0; q < rows; q++) {
      const r = q * everyRow;
      const light = means[0]![r]!;
      const at = (q * columns + c) * SIZE;
      values[at] = 18 * Math.log(light + 12);
      values[at + 1] = (100 * means[1]![r]!) / (light + 12);
      values[at + 2] = (100 * means[2]![r]!) / (light + 12);
      values[at + 3] = 3 * Math.log(Math.max(0, squares[r]! - light * light) + 1);
      values[at + 4] = r * strip.yStep;
    }
  }
  return { columns, rows, everyColumn, everyRow, values };
}

/**
 * Judges every place by its nearest neighbours among places known to be cloth and known to be outside.
 * @param edge outward distance of the edge in each coarse row, as far as known.
 * @param margin how far from that edge a place must lie to be known, mm: inside, outside nearest, outside farthest.
 */
export function sideEvidence(
  strip: SideStrip,
  features: SideFeatures,
  edge: Float32Array,
  margin: { readonly inside: number; readonly outsideFrom: number; readonly outsideTo: number; readonly deep: number },
): SideEvidence | null {
  const { columns, rows, everyColumn, everyRow } = features;
  const cloth: number[] = [];
  const outside: number[] = [];
  for (let q = 0; q < rows; q++) {
    for (let c = 0; c < columns; c++) {
      if (!strip.seen[q * everyRow * strip.columns + c * everyColumn]) continue;
      const u = strip.outward[c * everyColumn]! - edge[q]!;
      if (u < -margin.inside && u > -margin.deep) cloth.push(q * columns + c);
      else if (u > margin.outsideFrom && u < margin.outsideTo) outside.push(q * columns + c);
    }
  }
  if (cloth.length < 30 || outside.length < 30) return null;
  const take = (places: readonly number[]): Float32Array => {
    const step = Math.max(1, places.length / SAMPLES);
    const list: number[] = [];
    for (let s = 0; s < places.length; s += step) {
      const at = places[Math.floor(s)]! * SIZE;
      for (let f = 0; f < SIZE; f++) list.push(features.values[at + f]!);
    }
    return Float32Array.from(list);
  };
  // Height counts softly: a pattern behind the loom and the yarns in the cloth change with it.
  const kinds = twoKinds(SIZE, take(cloth), take(outside), Float32Array.from([4, 3, 3, 2.5, 9]));
  const values = new Float32Array(columns * rows);
  for (let p = 0; p < values.length; p++) {
    const q = Math.floor(p / columns);
    if (!strip.seen[q * everyRow * strip.columns + (p - q * columns) * everyColumn]) {
      values[p] = -1;
      continue;
    }
    const d = nearestDistances(kinds, features.values, p * SIZE);
    values[p] = Math.max(-2, Math.min(2, 2.5 * Math.log((d.second + 0.4) / (d.first + 0.4))));
  }
  return { columns, rows, everyColumn, everyRow, values };
}
