import { type CombChain, longestChain } from './combChain.ts';
import type { RidgeTrack } from './ridgeTracks.ts';

/** The comb of strings as one row of the turned picture shows it. */
export interface CombRow {
  readonly y: number;
  readonly x: readonly number[];
  readonly steps: readonly number[];
  readonly period: number;
}

/** The band of parallel strings as a first look finds it, in the turned picture. */
export interface WarpBand {
  readonly rows: readonly CombRow[];
  /** Most strings counted in a row. */
  readonly count: number;
  /** Sum of strings over rows: what competing bands are ranked by. */
  readonly score: number;
  /** Period = at + slope (y − middle), px. */
  readonly period: (y: number) => number;
  /** Outer strings, px. */
  readonly left: (y: number) => number;
  readonly right: (y: number) => number;
  readonly top: number;
  readonly bottom: number;
}

/** A track met by a line across. */
export interface Crossing {
  readonly x: number;
  readonly strength: number;
}

/** Where each track crosses the line y = at + slope x, rising; tracks are straight between their samples. */
export function crossings(tracks: readonly RidgeTrack[], at: number, slope = 0): Crossing[] {
  const found: Crossing[] = [];
  for (const track of tracks) {
    const last = track.y.length - 1;
    const y = at + slope * track.x[0]!;
    if (y < track.y[0]! || y > track.y[last]!) continue;
    let low = 0;
    let high = last;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (track.y[middle]! <= y) low = middle;
      else high = middle;
    }
    const share = high === low ? 0 : (y - track.y[low]!) / (track.y[high]! - track.y[low]!);
    found.push({
      x: track.x[low]! + share * (track.x[high]! - track.x[low]!),
      strength: track.strength[low]! + share * (track.strength[high]! - track.strength[low]!),
    });
  }
  return found.sort((a, b) => a.x - b.x);
}

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? 0;
};

/** Straight line through (y, value) by repeated medians (Siegel): up to half the rows may be wrong. */
function steadyLine(rows: readonly { y: number; value: number }[]): (y: number) => number {
  const slopes = rows.map((a) =>
    median(rows.filter((b) => Math.abs(b.y - a.y) > 1e-9).map((b) => (b.value - a.value) / (b.y - a.y))),
  );
  const slope = median(slopes);
  const at = median(rows.map((row) => row.value - slope * row.y));
  return (y) => at + slope * y;
}

/** The longest even chain of crossings, its ends cut back to where the lines are about as strong as in its middle. */
export function combAcross(crossed: readonly Crossing[], least: number, most: number): CombChain | null {
  const chain = longestChain(
    crossed.map((crossing) => crossing.x),
    least,
    most,
    { slack: 0.2, misses: 2 },
  );
  if (!chain) return null;
  const strength = chain.places.map((place) => crossed[place.item]!.strength);
  const quarter = Math.floor(strength.length / 4);
  const usual = median(strength.slice(quarter, strength.length - quarter));
  let first = 0;
  let last = chain.places.length - 1;
  while (first < last && strength[first]! < 0.35 * usual) first++;
  while (last > first && strength[last]! < 0.35 * usual) last--;
  const start = chain.places[first]!.step;
  return {
    period: chain.period,
    places: chain.places.slice(first, last + 1).map((place) => ({ ...place, step: place.step - start })),
  };
}

/**
 * Looks for the comb in every few rows and keeps the stretch of rows that agree.
 * @param ends strings (ends) the plan has: rows with less than two fifths of them don't count.
 * @param least smallest distance between strings looked for, px; `most` the largest.
 */
export function findWarpBand(
  tracks: readonly RidgeTrack[],
  height: number,
  ends: number,
  least: number,
  most: number,
  rowStep: number,
): WarpBand | null {
  const rows: CombRow[] = [];
  for (let y = 0; y < height; y += rowStep) {
    const chain = combAcross(crossings(tracks, y), least, most);
    if (!chain || chain.places.length < Math.max(6, 0.4 * ends)) continue;
    rows.push({
      y,
      x: chain.places.map((place) => place.x),
      steps: chain.places.map((place) => place.step),
      period: chain.period,
    });
  }
  if (rows.length < 3) return null;
  // Rows that share one period belong together; the best-filled period wins.
  let together: CombRow[] = [];
  for (const seed of rows) {
    const alike = rows.filter((row) => Math.abs(row.period / seed.period - 1) < 0.12);
    if (weight(alike) > weight(together)) together = alike;
  }
  if (together.length < 3) return null;
  const most2 = Math.max(...together.map((row) => row.x.length));
  const full = together.filter((row) => row.x.length >= 0.7 * most2);
  const line = (value: (row: CombRow) => number) => steadyLine(full.map((row) => ({ y: row.y, value: value(row) })));
  return {
    rows: together,
    count: most2,
    score: weight(together),
    period: line((row) => row.period),
    left: line((row) => row.x[0]!),
    right: line((row) => row.x[row.x.length - 1]!),
    top: together[0]!.y,
    bottom: together[together.length - 1]!.y,
  };
}

const weight = (rows: readonly CombRow[]): number => rows.reduce((sum, row) => sum + row.x.length, 0);
