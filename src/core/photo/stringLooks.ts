import type { ClothFrame } from './clothFrame.ts';
import type { LoomSampler } from './sampleLoom.ts';
import { median } from './statistics.ts';

/** One look across a string: where its middle lies, loom mm. */
export interface StringLook {
  readonly y: number;
  readonly x: number;
  readonly sigma: number;
  /** Breadth over which its edges rise from gap to string, mm: how unsharp the picture is there. */
  readonly rise: number;
}

/** Height of string averaged in one look, mm. */
const HEIGHT = 2.4;
/** From look to look, mm. */
export const EVERY = 3;
/** A string and what lies beside it must differ by this many colour steps. */
const FEWEST_STEPS = 12;

/**
 * Looks for one string all the way down from its notch, each time half-way between the string's own colour and that
 * of either gap: where both edges are met and lie a string apart, their middle is the string's. What the string's
 * colour is, is learnt near the notch and followed down.
 * @param course loom x expected at a height. @param reach how far from there it is looked for, mm.
 */
export function stringLooks(
  sampler: LoomSampler,
  frame: ClothFrame,
  course: (y: number) => number,
  fromY: number,
  toY: number,
  reach: number,
): StringLook[] {
  const step = frame.mmPerPx * 0.5;
  const flank = Math.max(2 * frame.mmPerPx, 0.12 * frame.pitch);
  const half = reach + frame.endHalf + flank + 2 * frame.mmPerPx;
  const side = Math.ceil(half / step);
  const columns = 2 * side + 1;
  const profile = new Float32Array(columns * 3);
  const place = new Float32Array(3);
  const looks: StringLook[] = [];
  let usual: number[] | null = null;
  const early: number[][] = [];
  for (let y = fromY; y >= toY; y -= EVERY) {
    profile.fill(0);
    let rows = 0;
    let inside = true;
    for (let v = y - HEIGHT / 2; v <= y + HEIGHT / 2; v += Math.max(frame.mmPerPx, HEIGHT / 6)) {
      const x = course(v);
      for (let k = 0; k < columns; k++) {
        if (!sampler.read(x + (k - side) * step, v, place, 0)) inside = false;
        for (let c = 0; c < 3; c++) profile[k * 3 + c]! += place[c]!;
      }
      rows++;
    }
    if (!inside) continue;
    for (let i = 0; i < profile.length; i++) profile[i]! /= rows;
    if (usual === null) {
      early.push(Array.from(profile.subarray(side * 3, side * 3 + 3)));
      if (early.length === 5) usual = [0, 1, 2].map((c) => median(early.map((one) => one[c]!)));
    }
    const seen = edgesOf(profile, side, step, frame, flank, reach);
    if (!seen) continue;
    const core = Array.from(profile.subarray(seen.middle * 3, seen.middle * 3 + 3));
    if (usual !== null) {
      const apart = Math.hypot(...core.map((value, c) => value - usual![c]!));
      if (apart > Math.max(25, 0.8 * seen.contrast)) continue;
      usual = usual.map((value, c) => value + 0.2 * (core[c]! - value));
    }
    looks.push({
      y,
      x: course(y) + seen.u,
      rise: seen.rise,
      sigma: Math.hypot(0.05, 0.15 * frame.mmPerPx, 1.5 / seen.contrast, 0.3 * seen.wider),
    });
  }
  return looks;
}

/** The string's two edges in a profile, nearest to its middle column. */
function edgesOf(
  profile: Float32Array,
  side: number,
  step: number,
  frame: ClothFrame,
  flank: number,
  reach: number,
): { u: number; middle: number; contrast: number; wider: number; rise: number } | null {
  const columns = 2 * side + 1;
  const half = frame.endHalf / step;
  const mean = (from: number, to: number): [number, number, number] => {
    const low = Math.max(0, Math.round(from));
    const high = Math.min(columns - 1, Math.max(low, Math.round(to)));
    const sum: [number, number, number] = [0, 0, 0];
    for (let k = low; k <= high; k++) for (let c = 0; c < 3; c++) sum[c]! += profile[k * 3 + c]! / (high - low + 1);
    return sum;
  };
  const blur = (1.2 * frame.mmPerPx) / step;
  let best: { u: number; middle: number; contrast: number; wider: number; rise: number; worth: number } | null = null;
  for (let m = Math.ceil(side - reach / step); m <= Math.floor(side + reach / step); m++) {
    const core = mean(m - 0.5 * half, m + 0.5 * half);
    const edge = (sign: -1 | 1): { at: number; contrast: number; rise: number } | null => {
      const near = half + blur;
      const far = near + flank / step;
      const gap = sign < 0 ? mean(m - far, m - near) : mean(m + near, m + far);
      const way = [0, 1, 2].map((c) => core[c]! - gap[c]!);
      const power = way.reduce((sum, value) => sum + value * value, 0);
      if (power < FEWEST_STEPS ** 2) return null;
      const share = (k: number): number =>
        way.reduce((sum, value, c) => sum + value * (profile[k * 3 + c]! - gap[c]!), 0) / power;
      for (let d = 0; d < far; d++) {
        const k = m + sign * d;
        const next = k + sign;
        if (next < 0 || next >= columns) return null;
        const inner = share(k);
        const outer = share(next);
        if (inner >= 0.5 && outer < 0.5)
          return {
            at: k + (sign * (inner - 0.5)) / (inner - outer),
            contrast: Math.sqrt(power),
            rise: step / (inner - outer),
          };
      }
      return null;
    };
    const left = edge(-1);
    const right = edge(1);
    if (!left || !right) continue;
    const breadth = (right.at - left.at) / (2 * half);
    if (breadth < 0.6 || breadth > 1.5) continue;
    const middle = (left.at + right.at) / 2;
    if (Math.abs(middle - m) > 1) continue;
    const contrast = Math.min(left.contrast, right.contrast);
    // Of several the one nearest to where it is expected, unless it stands out much less.
    const worth = contrast * Math.exp(-0.5 * (((middle - side) * step) / (0.5 * reach)) ** 2);
    if (best && best.worth >= worth) continue;
    best = {
      u: (middle - side) * step,
      middle: Math.round(middle),
      contrast,
      rise: (left.rise + right.rise) / 2,
      wider: Math.abs(right.at - left.at - 2 * half) * step,
      worth,
    };
  }
  return best;
}
