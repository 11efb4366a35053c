import { alongColumns, alongRows, gaussianKernel, ridgeKernel } from './gaussian.ts';
import type { Raster } from './raster.ts';

/** A fine line followed down a turned picture: one x for each of its rows, in rising y. */
export interface RidgeTrack {
  readonly y: readonly number[];
  readonly x: readonly number[];
  /** The ridge filter's answer, grey levels. */
  readonly strength: readonly number[];
}

export interface RidgeSettings {
  /** Gaussian sigma across the line, px: about 0.6 of the line's half width. */
  readonly sigma: number;
  readonly polarity: 'bright' | 'dark';
  /** Rows between samples. */
  readonly step: number;
  /** Shortest track kept, px. */
  readonly shortest: number;
  /** Longest stretch without a ridge that a track may cross, px. */
  readonly gap: number;
}

interface OpenTrack {
  readonly x: number[];
  readonly y: number[];
  readonly strength: number[];
  lastX: number;
  lastY: number;
  slope: number;
}

/** How far from upright a line may run, as a slope: perspective and draw-in together stay below it. */
const STEEPEST = 0.22;

/** Sub-pixel ridge positions in one row, by a parabola through the filter's answer. @param sign −1 for dark lines. */
function rowPeaks(answer: Raster, sign: 1 | -1, y: number, least: number): { x: number; strength: number }[] {
  const { width, data } = answer;
  const row = y * width;
  const peaks: { x: number; strength: number }[] = [];
  for (let x = 1; x < width - 1; x++) {
    const here = sign * data[row + x]!;
    if (here < least) continue;
    const before = sign * data[row + x - 1]!;
    const after = sign * data[row + x + 1]!;
    if (here < before || here <= after) continue;
    const bend = before - 2 * here + after;
    peaks.push({ x: x + (bend < 0 ? (0.5 * (before - after)) / bend : 0), strength: here });
  }
  return peaks;
}

/** The ridge filter's answer to nearly upright lines: above 0 for bright ones, below for dark. @param sigma px, as in {@link RidgeSettings}. */
export function ridgeAnswer(raster: Raster, sigma: number): Raster {
  const upright = alongColumns(raster, gaussianKernel(Math.max(1.5, sigma)));
  return alongRows(upright, ridgeKernel(sigma));
}

/** Follows bright or dark lines that run nearly upright. @param answer from {@link ridgeAnswer} with the same sigma. */
export function ridgeTracks(answer: Raster, settings: RidgeSettings): RidgeTrack[] {
  const { sigma, step } = settings;
  const sign = settings.polarity === 'bright' ? 1 : -1;
  const least = ridgeFloor(answer);
  const done: OpenTrack[] = [];
  let open: OpenTrack[] = [];
  for (let y = 0; y < answer.height; y += step) {
    const peaks = rowPeaks(answer, sign, y, least);
    const taken = new Uint8Array(peaks.length);
    const still: OpenTrack[] = [];
    let from = 0;
    open.sort((a, b) => a.lastX + a.slope * (y - a.lastY) - (b.lastX + b.slope * (y - b.lastY)));
    for (const track of open) {
      const expected = track.lastX + track.slope * (y - track.lastY);
      const reach = Math.min(sigma * 1.2, 0.6 * sigma + 0.05 * (y - track.lastY) + 0.4);
      while (from < peaks.length && peaks[from]!.x < expected - 1.3 * sigma) from++;
      let best = -1;
      for (let k = from; k < peaks.length && peaks[k]!.x <= expected + reach; k++) {
        const off = Math.abs(peaks[k]!.x - expected);
        if (taken[k] === 0 && off <= reach && (best < 0 || off < Math.abs(peaks[best]!.x - expected))) best = k;
      }
      if (best >= 0) {
        taken[best] = 1;
        extend(track, peaks[best]!, y);
        still.push(track);
      } else if (y - track.lastY > Math.min(settings.gap, 6 * step + 0.5 * (track.lastY - track.y[0]!)))
        done.push(track);
      else still.push(track);
    }
    for (let k = 0; k < peaks.length; k++) {
      const { x, strength } = peaks[k]!;
      if (taken[k] === 0) still.push({ x: [x], y: [y], strength: [strength], lastX: x, lastY: y, slope: 0 });
    }
    open = still;
  }
  return [...done, ...open].filter(
    (track) =>
      track.lastY - track.y[0]! >= settings.shortest && track.y.length * step >= 0.5 * (track.lastY - track.y[0]!),
  );
}

/** The slope is that of the chord over the last stretch, so it steadies as the track grows. */
function extend(track: OpenTrack, peak: { x: number; strength: number }, y: number): void {
  const { x } = peak;
  track.x.push(x);
  track.strength.push(peak.strength);
  track.y.push(y);
  track.lastX = x;
  track.lastY = y;
  const back = Math.max(0, track.x.length - 20);
  const run = y - track.y[back]!;
  if (run > 0) {
    const chord = (x - track.x[back]!) / run;
    // A young track's chord is mostly noise: pull it towards upright.
    const trust = run / (run + 25);
    track.slope = Math.max(-STEEPEST, Math.min(STEEPEST, chord * trust));
  }
}

/** A ridge counts when it answers well above the grain of the picture. */
function ridgeFloor(answer: Raster): number {
  const { data } = answer;
  const stride = Math.max(1, Math.floor(data.length / 20_000));
  const sample = new Float32Array(Math.ceil(data.length / stride));
  for (let k = 0; k < sample.length; k++) sample[k] = Math.abs(data[k * stride]!);
  sample.sort();
  const median = sample[sample.length >> 1]!;
  const high = sample[Math.floor(sample.length * 0.97)]!;
  return Math.max(0.5, Math.min(1.5 * median, 0.25 * high));
}
