import { NORMAL_DENSITY, normalBelow } from './normalCurve.ts';

/** A string across its length, fitted as a bar of even colour between two grounds of their own colour, blurred. */
export interface StringProfile {
  /** Middle of the string, same unit as the profile's places. */
  readonly centre: number;
  readonly sigma: number;
  /** Colour of the ground on the left, of the string and of the ground on the right: three channels each. */
  readonly left: readonly [number, number, number];
  readonly core: readonly [number, number, number];
  readonly right: readonly [number, number, number];
  /** Distance in colour from the string to the nearer-coloured ground, grey levels. */
  readonly contrast: number;
  /** Root mean square of what the model leaves, grey levels per channel. */
  readonly residual: number;
}

/**
 * Finds a string's middle in a colour profile. Because each side has a ground of its own, unequal contrast on the two
 * sides does not draw the middle to one side, which a plain maximum of a ridge filter would suffer (Steger 1998).
 * @param colours three numbers a sample; sample k lies at `from + k · step`.
 * @param halfWidth half the string's breadth; `blur` the Gaussian sigma of the picture's unsharpness: same unit.
 * @param start first guess of the middle; the answer stays within `reach` of it.
 * @returns null when the fit does not settle inside.
 */
export function fitStringProfile(
  colours: Float64Array,
  from: number,
  step: number,
  halfWidth: number,
  blur: number,
  start: number,
  reach: number,
): StringProfile | null {
  const n = colours.length / 3;
  let centre = nearestString(colours, from, step, halfWidth, blur, start, reach);
  const basis = new Float64Array(3 * n);
  const slope = new Float64Array(3 * n);
  const level = new Float64Array(9);
  let information = 0;
  let squares = 0;
  for (let round = 0; round < 8; round++) {
    for (let k = 0; k < n; k++) {
      const u = from + k * step - centre;
      const a = (u + halfWidth) / blur;
      const b = (u - halfWidth) / blur;
      const bellA = Math.exp(-0.5 * a * a);
      const bellB = Math.exp(-0.5 * b * b);
      const onLeft = 1 - normalBelow(a, bellA);
      const onRight = normalBelow(b, bellB);
      basis[3 * k] = onLeft;
      basis[3 * k + 1] = 1 - onLeft - onRight;
      basis[3 * k + 2] = onRight;
      // Derivatives with respect to the middle.
      const da = (NORMAL_DENSITY * bellA) / blur;
      const db = (NORMAL_DENSITY * bellB) / blur;
      slope[3 * k] = da;
      slope[3 * k + 1] = db - da;
      slope[3 * k + 2] = -db;
    }
    if (!solveLevels(basis, colours, n, level)) return null;
    let pull = 0;
    information = 0;
    squares = 0;
    for (let k = 0; k < n; k++) {
      for (let c = 0; c < 3; c++) {
        let value = 0;
        let change = 0;
        for (let j = 0; j < 3; j++) {
          value += basis[3 * k + j]! * level[3 * j + c]!;
          change += slope[3 * k + j]! * level[3 * j + c]!;
        }
        const off = colours[3 * k + c]! - value;
        pull += change * off;
        information += change * change;
        squares += off * off;
      }
    }
    if (information < 1e-9) return null;
    const move = Math.max(-0.5 * halfWidth, Math.min(0.5 * halfWidth, pull / information));
    centre += move;
    if (Math.abs(centre - start) > reach) return null;
    if (Math.abs(move) < 1e-3 * halfWidth) break;
  }
  const colour = (j: number): [number, number, number] => [level[3 * j]!, level[3 * j + 1]!, level[3 * j + 2]!];
  const left = colour(0);
  const core = colour(1);
  const right = colour(2);
  const apart = (a: readonly number[], b: readonly number[]) => Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!);
  const residual = Math.sqrt(squares / Math.max(1, 3 * n - 10));
  return {
    centre,
    sigma: residual / Math.sqrt(information),
    left,
    core,
    right,
    contrast: Math.min(apart(left, core), apart(right, core)),
    residual,
  };
}

/**
 * Gauss–Newton finds the string only from within its own breadth: further out the best of a few starts is taken, by
 * how much darker or lighter than both sides the stretch around each is.
 */
function nearestString(
  colours: Float64Array,
  from: number,
  step: number,
  halfWidth: number,
  blur: number,
  start: number,
  reach: number,
): number {
  if (reach <= halfWidth + blur) return start;
  const n = colours.length / 3;
  const basis = new Float64Array(3 * n);
  const level = new Float64Array(9);
  let best = start;
  let least = Number.POSITIVE_INFINITY;
  const stride = 0.6 * (halfWidth + blur);
  const starts = Math.ceil(reach / stride);
  for (let s = -starts; s <= starts; s++) {
    const centre = start + (s / starts) * reach;
    for (let k = 0; k < n; k++) {
      const u = from + k * step - centre;
      const onLeft = 1 - normalBelow((u + halfWidth) / blur);
      const onRight = normalBelow((u - halfWidth) / blur);
      basis[3 * k] = onLeft;
      basis[3 * k + 1] = 1 - onLeft - onRight;
      basis[3 * k + 2] = onRight;
    }
    if (!solveLevels(basis, colours, n, level)) continue;
    let squares = 0;
    for (let k = 0; k < n; k++) {
      for (let c = 0; c < 3; c++) {
        const value = basis[3 * k]! * level[c]! + basis[3 * k + 1]! * level[3 + c]! + basis[3 * k + 2]! * level[6 + c]!;
        squares += (colours[3 * k + c]! - value) ** 2;
      }
    }
    if (squares < least) {
      least = squares;
      best = centre;
    }
  }
  return best;
}

/** Least squares for the three levels of each channel; a slight pull to the mean keeps a side that isn't seen in hand. */
function solveLevels(basis: Float64Array, colours: Float64Array, n: number, level: Float64Array): boolean {
  let aa = 0;
  let ab = 0;
  let ac = 0;
  let bb = 0;
  let bc = 0;
  let cc = 0;
  for (let k = 0; k < n; k++) {
    const a = basis[3 * k]!;
    const b = basis[3 * k + 1]!;
    const c = basis[3 * k + 2]!;
    aa += a * a;
    ab += a * b;
    ac += a * c;
    bb += b * b;
    bc += b * c;
    cc += c * c;
  }
  const ridge = 1e-4 * n;
  aa += ridge;
  bb += ridge;
  cc += ridge;
  const det = aa * (bb * cc - bc * bc) - ab * (ab * cc - bc * ac) + ac * (ab * bc - bb * ac);
  if (!(Math.abs(det) > 1e-12)) return false;
  for (let c = 0; c < 3; c++) {
    let mean = 0;
    for (let k = 0; k < n; k++) mean += colours[3 * k + c]!;
    mean /= n;
    let p = ridge * mean;
    let q = ridge * mean;
    let r = ridge * mean;
    for (let k = 0; k < n; k++) {
      const value = colours[3 * k + c]!;
      p += basis[3 * k]! * value;
      q += basis[3 * k + 1]! * value;
      r += basis[3 * k + 2]! * value;
    }
    level[c] = (p * (bb * cc - bc * bc) - ab * (q * cc - bc * r) + ac * (q * bc - bb * r)) / det;
    level[3 + c] = (aa * (q * cc - bc * r) - p * (ab * cc - bc * ac) + ac * (ab * r - q * ac)) / det;
    level[6 + c] = (aa * (bb * r - q * bc) - ab * (ab * r - q * ac) + p * (ab * bc - bb * ac)) / det;
  }
  return true;
}
