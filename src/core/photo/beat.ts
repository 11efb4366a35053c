import type { BeatRow } from '../model/check.ts';
import { type Measurement, measurement } from '../model/measurement.ts';
import type { ClothFrame } from './clothFrame.ts';
import { boxMean, median } from './statistics.ts';
import type { WeaveLine } from './weaveLines.ts';

/** How the passes lie up the cloth. */
export interface Beat {
  readonly pass: Measurement;
  readonly rows: readonly BeatRow[];
  /** Passes woven up to a height, counted from the base. */
  readonly passesAt: (y: number) => number;
  /** 1 when even ends carry the float of even passes, else 0: which of two neighbours lies on top first. */
  readonly evenFirst: boolean;
}

/** Each window looks at this many passes; one is laid every few passes. */
const WINDOW = 14;
const HOP = 3;
/** How far from the planned pass height the beat is looked for. */
const LOWEST = 0.66;
const HIGHEST = 1.5;

/**
 * Reads the beat from the floats. On one end a float comes every second pass, on the next end a pass later: the ends'
 * lightness added with alternate signs swings once in exactly two passes, whatever else repeats in the cloth.
 * @param scale by what share the floats look enlarged, and the one-sigma share of a length through scale alone.
 * @returns null when too little is woven or the floats can't be told apart.
 */
export function readBeat(
  lines: readonly WeaveLine[],
  frame: ClothFrame,
  scale: { readonly enlarged: number; readonly scaleSigma: number },
): Beat | null {
  const first = lines[0];
  if (!first) return null;
  const { yStep } = first;
  const rows = Math.max(...lines.map((line) => line.rows));
  const top = rows * yStep;
  if (top < 6 * frame.planPass) return null;
  const swing = alternateSum(lines, rows, frame.planPass / yStep);
  const plan = frame.planPass;
  const reach = Math.min(WINDOW * plan, top);
  const hop = Math.min(HOP * plan, Math.max(yStep, (top - reach) / 2));
  const centres: number[] = [];
  for (let y = reach / 2; y <= top - reach / 2 + 1e-6; y += hop) centres.push(y);
  const spectrum: number[] = [];
  const heights: number[] = [];
  for (let h = LOWEST * plan; h <= HIGHEST * plan; h *= 1.005) {
    heights.push(h);
    spectrum.push(centres.reduce((sum, y) => sum + Math.hypot(...windowSum(swing, yStep, y, reach, h)) ** 2, 0));
  }
  let peak = 0;
  for (let k = 1; k < spectrum.length; k++) if (spectrum[k]! > spectrum[peak]!) peak = k;
  if (peak === 0 || peak === spectrum.length - 1 || spectrum[peak]! < 5 * median(spectrum)) return null;
  const start = heights[peak]!;
  return followPhase(swing, yStep, centres, reach, start, top, scale);
}

/** Ends with alternate signs, each freed of everything slower than two passes. */
function alternateSum(lines: readonly WeaveLine[], rows: number, pass: number): Float32Array {
  const sum = new Float32Array(rows);
  const count = new Float32Array(rows);
  for (const line of lines) {
    if (line.rows < 4 * pass) continue;
    const light = new Float32Array(line.rows);
    for (let r = 0; r < line.rows; r++) light[r] = line.colours[r * 3]!;
    const slow = boxMean(light, Math.round(pass));
    const sign = line.end % 2 === 0 ? 1 : -1;
    for (let r = 0; r < line.rows - Math.round(0.5 * pass); r++) {
      // One tail or shadow edge must not outshout a row of floats.
      sum[r]! += sign * Math.max(-25, Math.min(25, light[r]! - slow[r]!));
      count[r]!++;
    }
  }
  for (let r = 0; r < rows; r++) sum[r]! /= Math.sqrt(Math.max(1, count[r]!));
  return sum;
}

/** The swing's cosine and sine part in a rounded window, for passes of height h. */
function windowSum(swing: Float32Array, yStep: number, centre: number, reach: number, h: number): [number, number] {
  const from = Math.max(0, Math.ceil((centre - reach / 2) / yStep));
  const to = Math.min(swing.length, Math.floor((centre + reach / 2) / yStep));
  let real = 0;
  let imaginary = 0;
  for (let r = from; r < to; r++) {
    const y = r * yStep;
    const weight = 0.5 + 0.5 * Math.cos((2 * Math.PI * (y - centre)) / reach);
    const angle = (Math.PI * y) / h;
    real += weight * swing[r]! * Math.cos(angle);
    imaginary -= weight * swing[r]! * Math.sin(angle);
  }
  return [real, imaginary];
}

function followPhase(
  swing: Float32Array,
  yStep: number,
  centres: readonly number[],
  reach: number,
  h: number,
  top: number,
  scale: { readonly enlarged: number; readonly scaleSigma: number },
): Beat | null {
  // How far the floats rise is known to about a third.
  const shareScale = Math.hypot(scale.scaleSigma, scale.enlarged / 3);
  const shrink = 1 / (1 + scale.enlarged);
  const sums = centres.map((y) => windowSum(swing, yStep, y, reach, h));
  const turn = 2 * Math.PI;
  // Passes at every window's middle: those of an even beat plus what the phase has run ahead, half a turn a pass.
  const passes: number[] = [];
  let lead = 0;
  let drift = 0;
  let before = 0;
  sums.forEach(([real, imaginary], k) => {
    const phase = Math.atan2(imaginary, real);
    if (k === 0) lead = phase;
    else {
      let step = phase - before;
      step -= turn * Math.round((step - drift) / turn);
      lead += step;
      drift = 0.7 * drift + 0.3 * step;
    }
    before = phase;
    passes.push(centres[k]! / h + lead / Math.PI);
  });
  const n = centres.length;
  const slope = (k: number): number => {
    if (n === 1) return 1 / h;
    const a = Math.max(0, k - 2);
    const b = Math.min(n - 1, k + 2);
    return (passes[b]! - passes[a]!) / (centres[b]! - centres[a]!);
  };
  const raw = (y: number): number => {
    if (y <= centres[0]!) return passes[0]! - (centres[0]! - y) * slope(0);
    if (y >= centres[n - 1]!) return passes[n - 1]! + (y - centres[n - 1]!) * slope(n - 1);
    let k = 0;
    while (k < n - 2 && centres[k + 1]! <= y) k++;
    const share = (y - centres[k]!) / (centres[k + 1]! - centres[k]!);
    return passes[k]! + share * (passes[k + 1]! - passes[k]!);
  };
  const whole = raw(top) - raw(0);
  if (!(whole > 3)) return null;
  const bends = passes.slice(2).map((value, k) => value - 2 * passes[k + 1]! + passes[k]!);
  const noise = bends.length > 2 ? Math.sqrt(bends.reduce((sum, b) => sum + b * b, 0) / bends.length / 6) : 0.1;
  const sigmaShare = Math.hypot((Math.SQRT2 * Math.max(noise, 0.04)) / Math.max(3, whole - WINDOW / 2), shareScale);
  const mean = (top / whole) * shrink;
  const rows = centres.map((y, k) => {
    const pass = shrink / slope(k);
    const local = Math.hypot((Math.SQRT2 * Math.max(noise, 0.04)) / (4 * HOP), shareScale);
    return { y, pass: measurement(pass, pass * local, Math.round(reach / pass), 'floats') };
  });
  // On an even end the float's crest lies half a pass above the start of its pass.
  const first = raw(0);
  const offset = ((first % 2) + 2) % 2;
  const evenFirst = Math.cos(Math.PI * (offset + 0.5)) > 0;
  return {
    pass: measurement(mean, mean * sigmaShare, Math.round(whole), 'floats'),
    rows,
    passesAt: (y) => raw(y) - first,
    evenFirst,
  };
}
