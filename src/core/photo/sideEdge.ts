import type { ClothFrame } from './clothFrame.ts';
import type { SideStrip } from './sideStrip.ts';

/** The weft's outermost place in one fine row, as an outward distance from the guide; NaN where it can't be told. */
export interface SideEdges {
  readonly outward: Float32Array;
  /** How far cloth and surroundings differ there, in colour steps. */
  readonly contrast: Float32Array;
  /** Breadth of a band there that is neither: a shadow beside the cloth, hairs, mm. */
  readonly band: Float32Array;
}

/** A band beside the cloth narrower than this is blur, mm. */
const LEAST_BAND = 0.5;
/**
 * The end of a float is round and shows half its brightness where its face has turned away so far that
 * 1 − cos(arcsin ½) of its radius still lies beyond: its outline stands that much farther out (diffuse light from the
 * camera's side, Lambert's law). Beaten weft is flattened: the radius, in passes, is what our training scenes show.
 */
const TURNED_AWAY = 0.134;
const FLOAT_RADIUS = 0.7;
/** The cloth's colour is left for good when it doesn't come back within this, mm. */
const LASTING = 0.6;

/**
 * Refines a rough edge row by row: half-way from the colour just outside to the colour just inside, met from outside.
 * @param rough outward distance in every fine row, mm.
 */
export function sideEdges(strip: SideStrip, rough: Float32Array, frame: ClothFrame): SideEdges {
  const { rows, columns, colours } = strip;
  const step = strip.outward[1]! - strip.outward[0]!;
  const reach = Math.max(1, Math.round((0.3 * frame.planPass) / strip.yStep));
  const outward = new Float32Array(rows).fill(Number.NaN);
  const contrast = new Float32Array(rows);
  const band = new Float32Array(rows);
  const around = Math.max(1, 0.16 * frame.pitch);
  // Hairs may have led the rough edge out by more than the cloth itself ever leads it in.
  const inward = Math.max(around, 0.4 * frame.pitch);
  const blur = 2.2 * frame.mmPerPx;
  const mean = (r: number, fromMm: number, toMm: number, out: Float64Array): boolean => {
    const from = Math.max(0, Math.round((fromMm - strip.outward[0]!) / step));
    const to = Math.min(columns, Math.max(from + 1, Math.round((toMm - strip.outward[0]!) / step)));
    out.fill(0);
    let n = 0;
    for (let q = Math.max(0, r - reach); q <= Math.min(rows - 1, r + reach); q++) {
      for (let k = from; k < to; k++) {
        const at = q * columns + k;
        if (!strip.seen[at]) return false;
        for (let c = 0; c < 3; c++) out[c]! += colours[at * 3 + c]!;
        n++;
      }
    }
    for (let c = 0; c < 3; c++) out[c]! /= Math.max(1, n);
    return n > 0;
  };
  // Going outward from well inside, where the cloth's own colour is left for good: what lies between there and the
  // edge met from outside is a shadow on the table or hairs.
  const leavesCloth = (r: number, edge: number, cloth: Float64Array, differs: number): number | null => {
    const last = Math.max(2, Math.round(LASTING / step));
    const here = new Float64Array(3);
    const away: number[] = [];
    const from = Math.max(0, Math.round((edge - 0.4 * frame.pitch - strip.outward[0]!) / step));
    const to = Math.min(columns - 1, Math.round((edge + LASTING - strip.outward[0]!) / step));
    for (let k = from; k <= to; k++) {
      if (!mean(r, strip.outward[k]!, strip.outward[k]! + 1.01 * step, here)) return null;
      away.push(Math.hypot(here[0]! - cloth[0]!, here[1]! - cloth[1]!, here[2]! - cloth[2]!));
    }
    const limit = Math.max(0.5 * differs, 6);
    for (let i = 1; i + last <= away.length; i++) {
      if (away[i]! < limit || away.slice(i, i + last).some((value) => value < 0.8 * limit)) continue;
      const share = (limit - away[i - 1]!) / Math.max(1e-6, away[i]! - away[i - 1]!);
      return strip.outward[from + i - 1]! + Math.max(0, Math.min(1, share)) * step;
    }
    return null;
  };
  const inside = new Float64Array(3);
  const outside = new Float64Array(3);
  for (let r = 0; r < rows; r++) {
    let edge = rough[r]!;
    for (let round = 0; round < 2; round++) {
      if (!mean(r, edge - 0.45 * frame.pitch, edge - Math.max(blur, 0.1 * frame.pitch), inside)) break;
      if (!mean(r, edge + blur, edge + blur + 1.6, outside)) break;
      let power = 0;
      for (let c = 0; c < 3; c++) power += (inside[c]! - outside[c]!) ** 2;
      contrast[r] = Math.sqrt(power);
      if (power < 9) break;
      const share = (k: number): number => {
        let sum = 0;
        for (let c = 0; c < 3; c++) {
          sum += (inside[c]! - outside[c]!) * (colours[(r * columns + k) * 3 + c]! - outside[c]!);
        }
        return sum / power;
      };
      const from = Math.min(columns - 2, Math.round((edge + around - strip.outward[0]!) / step));
      const to = Math.max(0, Math.round((edge - inward - strip.outward[0]!) / step));
      let found = Number.NaN;
      for (let k = from; k >= to; k--) {
        const inner = share(k);
        const outer = share(k + 1);
        if (inner >= 0.5 && outer < 0.5) {
          found = strip.outward[0]! + (k + (inner - 0.5) / (inner - outer)) * step;
          break;
        }
      }
      if (Number.isNaN(found)) {
        outward[r] = Number.NaN;
        break;
      }
      outward[r] = found;
      edge = found;
    }
    if (Number.isNaN(outward[r]!)) continue;
    const left = leavesCloth(r, edge, inside, contrast[r]!);
    if (left !== null && left < edge - LEAST_BAND) {
      outward[r] = left;
      band[r] = edge - left;
    }
  }
  for (let r = 0; r < rows; r++) outward[r]! += TURNED_AWAY * FLOAT_RADIUS * frame.planPass;
  return { outward, contrast, band };
}
