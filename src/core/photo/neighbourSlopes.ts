/** What one end's own track says of its lean, x in mm per mm down from its notch. */
export interface OwnSlope {
  /** Null where nothing was followed. */
  readonly slope: number | null;
  readonly sigma: number;
}

/** Neighbouring ends lean alike: each lies on the line between its neighbours to this much, mm per mm. */
const ALIKE = 0.0012;
const ROUNDS = 12;

/**
 * The lean of every end from its own track and its neighbours together, by robust least squares: a track that was led
 * astray by a stripe or a shadow leans unlike the ends either side and loses its say.
 * @param own one after another, by end.
 * @returns slope and standard uncertainty of each; null when no end says anything.
 */
export function neighbourSlopes(own: readonly OwnSlope[]): { slope: number; sigma: number }[] | null {
  const n = own.length;
  if (!own.some((one) => one.slope !== null)) return null;
  let say: number[] = own.map((one) => (one.slope === null ? 0 : 1));
  let slopes: Float64Array = new Float64Array(n);
  let spread: Float64Array = new Float64Array(n);
  for (let round = 0; round < ROUNDS; round++) {
    const solved = smooth(own, say);
    slopes = solved.slopes;
    spread = solved.spread;
    say = own.map((one, i) => {
      if (one.slope === null) return 0;
      const off = Math.abs(one.slope - slopes[i]!) / one.sigma;
      // First by plain distance, so that a few far ones don't pull; then the far ones hardly count.
      return round < 4 ? 1 / Math.max(1, off) : 1 / (1 + (off / 2) ** 2) ** 2;
    });
  }
  return Array.from(slopes, (slope, i) => ({ slope, sigma: Math.sqrt(spread[i]!) }));
}

/** Normal equations of five diagonals, solved whole: there are at most a few hundred ends. */
function smooth(own: readonly OwnSlope[], say: readonly number[]): { slopes: Float64Array; spread: Float64Array } {
  const n = own.length;
  const a = Array.from({ length: n }, () => new Float64Array(2 * n));
  const b = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    // Held very loosely to straight, so that there is always an answer.
    a[i]![i]! += 1 / 0.05 ** 2;
    a[i]![n + i] = 1;
    const { slope, sigma } = own[i]!;
    if (slope !== null) {
      a[i]![i]! += say[i]! / sigma ** 2;
      b[i]! += (say[i]! * slope) / sigma ** 2;
    }
  }
  const bend = [-0.5, 1, -0.5];
  for (let i = 1; i + 1 < n; i++) {
    for (let p = 0; p < 3; p++) {
      for (let q = 0; q < 3; q++) a[i - 1 + p]![i - 1 + q]! += (bend[p]! * bend[q]!) / ALIKE ** 2;
    }
  }
  for (let i = 0; i < n; i++) {
    const pivot = a[i]![i]!;
    for (let k = i; k < 2 * n; k++) a[i]![k]! /= pivot;
    for (let r = 0; r < n; r++) {
      const factor = a[r]![i]!;
      if (r === i || factor === 0) continue;
      for (let k = i; k < 2 * n; k++) a[r]![k]! -= factor * a[i]![k]!;
    }
  }
  const slopes = new Float64Array(n);
  const spread = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < n; k++) slopes[i]! += a[i]![n + k]! * b[k]!;
    spread[i] = Math.max(0, a[i]![n + i]!);
  }
  return { slopes, spread };
}
