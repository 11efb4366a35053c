import type { BeatRow } from '../model/check.ts';
import { type Measurement, measurement } from '../model/measurement.ts';
import type { ClothFrame } from './clothFrame.ts';
import { boxMean, median } from './statistics.ts';
import type { WeaveLine } from './weaveLines.ts';

/** How the passes lie up the cloth. */
export interface Beat {
  readonly pass: Measurement;
  readonly rows: readonly BeatRow[];
  /** Passes woven up to a height on an end, counted from the base at the warp's middle; without an end, there. */
  readonly passesAt: (y: number, end?: number) => number;
  /** The count of passes, modulo two, at which floats of even ends have their crests; on odd ends a pass later. */
  readonly evenCrest: number;
}

/** How heights of floats are seen, which lie nearer to the camera than the strings. */
export interface FloatScale {
  /** By what share the floats look larger than the strings' plane shows lengths. */
  readonly enlarged: number;
  /** Where a float at the base would be seen, mm up from the base line: below it under a camera that is higher up. */
  readonly baseAt: number;
  /** Cloth x of the camera's foot, mm: floats are seen farther from it than they are. */
  readonly footX: number;
  /** One-sigma share of a length through scale alone. */
  readonly scaleSigma: number;
}

/** Each window looks at this many passes; one is laid every few passes. */
const WINDOW = 14;
const HOP = 3;
/** How far from the planned pass height the beat is looked for. */
const LOWEST = 0.66;
export const MOST_OFF_PLAN = 1.5;

/**
 * Reads the beat from the floats. On one end a float comes every second pass, on the next end a pass later: the ends'
 * lightness added with alternate signs swings once in exactly two passes, whatever else repeats in the cloth.
 * @returns null when too little is woven or the floats can't be told apart.
 */
export function readBeat(lines: readonly WeaveLine[], frame: ClothFrame, scale: FloatScale): Beat | null {
  const first = lines[0];
  if (!first) return null;
  const { yStep } = first;
  const rows = Math.max(...lines.map((line) => line.rows));
  const top = rows * yStep;
  if (top < 6 * frame.planPass) return null;
  const swings = alternating(lines, frame.planPass / yStep);
  if (swings.length === 0) return null;
  const plan = frame.planPass;
  const reach = Math.min(WINDOW * plan, top);
  const hop = Math.min(HOP * plan, Math.max(yStep, (top - reach) / 2));
  const centres: number[] = [];
  for (let y = reach / 2; y <= top - reach / 2 + 1e-6; y += hop) centres.push(y);
  // The rows may lean, so that ends far apart don't swing together: a few neighbours at a time are added.
  const groups = grouped(swings);
  const spectrum: number[] = [];
  const heights: number[] = [];
  for (let h = LOWEST * plan; h <= MOST_OFF_PLAN * plan; h *= 1.005) {
    heights.push(h);
    const power = (y: number): number =>
      groups.reduce((sum, group) => sum + Math.hypot(...windowSum(group, yStep, y, reach, h)) ** 2, 0);
    spectrum.push(centres.reduce((sum, y) => sum + power(y), 0));
  }
  let peak = 0;
  for (let k = 1; k < spectrum.length; k++) if (spectrum[k]! > spectrum[peak]!) peak = k;
  if (peak === 0 || peak === spectrum.length - 1 || spectrum[peak]! < 5 * median(spectrum)) return null;
  const start = heights[peak]!;
  return followPhase(swings, yStep, centres, reach, start, top, scale);
}

/** One end's lightness, signed by whether it is even, freed of everything slower than two passes. */
interface Swing {
  readonly end: number;
  readonly values: Float32Array;
}

function alternating(lines: readonly WeaveLine[], pass: number): Swing[] {
  return lines.flatMap((line) => {
    const rows = line.rows - Math.round(0.5 * pass);
    if (line.rows < 4 * pass) return [];
    const light = new Float32Array(line.rows);
    for (let r = 0; r < line.rows; r++) light[r] = line.colours[r * 3]!;
    const slow = boxMean(light, Math.round(pass));
    const sign = line.end % 2 === 0 ? 1 : -1;
    const values = new Float32Array(Math.max(0, rows));
    // One tail or shadow edge must not outshout a row of floats.
    for (let r = 0; r < rows; r++) values[r] = sign * Math.max(-25, Math.min(25, light[r]! - slow[r]!));
    return [{ end: line.end, values }];
  });
}

/** Ends added together when the beat is looked for. */
const GROUP = 6;

function grouped(swings: readonly Swing[]): Float32Array[] {
  const groups: Float32Array[] = [];
  for (let i = 0; i < swings.length; i += GROUP) {
    const members = swings.slice(i, i + GROUP);
    const sum = new Float32Array(Math.max(...members.map((one) => one.values.length)));
    for (const { values } of members) for (let r = 0; r < values.length; r++) sum[r]! += values[r]!;
    groups.push(sum);
  }
  return groups;
}

/** Half a turn of phase is a pass: how far a row may lean from one end to the next, in turns. */
const STEEPEST = 0.06;

/**
 * How the rows lean across the cloth in one window: the phase step from end to end that brings all ends together, and
 * their sum with it, seen from the warp's middle.
 */
function leaning(
  sums: readonly { readonly end: number; readonly real: number; readonly imaginary: number }[],
  middle: number,
  near: number | null,
): { lean: number; real: number; imaginary: number } {
  const at = (lean: number): { lean: number; real: number; imaginary: number } => {
    let real = 0;
    let imaginary = 0;
    for (const one of sums) {
      const angle = -2 * Math.PI * lean * (one.end - middle);
      const c = Math.cos(angle);
      const s = Math.sin(angle);
      real += one.real * c - one.imaginary * s;
      imaginary += one.real * s + one.imaginary * c;
    }
    return { lean, real, imaginary };
  };
  const ends = Math.max(4, sums.length);
  // A lean that matters turns the outer ends by a part of a turn; finer steps say nothing new.
  const step = 0.08 / ends;
  const reach = near === null ? STEEPEST : 0.5 / ends;
  let best = at(near ?? 0);
  for (let lean = (near ?? 0) - reach; lean <= (near ?? 0) + reach; lean += step) {
    const found = at(lean);
    if (Math.hypot(found.real, found.imaginary) > 1.02 * Math.hypot(best.real, best.imaginary)) best = found;
  }
  return best;
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
  swings: readonly Swing[],
  yStep: number,
  centres: readonly number[],
  reach: number,
  h: number,
  top: number,
  scale: FloatScale,
): Beat | null {
  // How far the floats rise is known to about a third.
  const shareScale = Math.hypot(scale.scaleSigma, scale.enlarged / 3);
  const shrink = 1 / (1 + scale.enlarged);
  const ends = swings.map((one) => one.end);
  const middle = (Math.min(...ends) + Math.max(...ends)) / 2;
  let near: number | null = null;
  const sums = centres.map((y) => {
    const parts = swings.map(({ end, values }) => {
      const [real, imaginary] = windowSum(values, yStep, y, reach, h);
      return { end, real, imaginary };
    });
    const found = leaning(parts, middle, near);
    near = found.lean;
    return found;
  });
  const turn = 2 * Math.PI;
  // Passes at every window's middle: those of an even beat plus what the phase has run ahead, half a turn a pass.
  const passes: number[] = [];
  let lead = 0;
  let drift = 0;
  let before = 0;
  sums.forEach(({ real, imaginary }, k) => {
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
  // Half a turn of phase is a pass.
  const leanAt = (y: number): number => {
    let k = 0;
    while (k < n - 1 && centres[k + 1]! <= y) k++;
    const next = Math.min(n - 1, k + 1);
    const share = next > k ? Math.max(0, Math.min(1, (y - centres[k]!) / (centres[next]! - centres[k]!))) : 0;
    return 2 * (sums[k]!.lean + share * (sums[next]!.lean - sums[k]!.lean));
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
  // The swing's phase is nothing at the crests of even ends.
  const first = raw(scale.baseAt);
  return {
    pass: measurement(mean, mean * sigmaShare, Math.round(whole), 'floats'),
    rows,
    passesAt: (y, end) => raw(y) - first + (end === undefined ? 0 : leanAt(y) * (end - middle)),
    evenCrest: ((-first % 2) + 2) % 2,
  };
}
