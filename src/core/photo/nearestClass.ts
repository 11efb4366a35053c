/** Points of two kinds, `size` numbers each, against which others are judged by their nearest neighbours. */
export interface TwoKinds {
  readonly size: number;
  readonly first: Float32Array;
  readonly second: Float32Array;
  /** One divisor a number, so that all count alike. */
  readonly scale: Float32Array;
}

export interface NearestDistances {
  /** Mean distance to the nearest few of each kind, in scaled units. */
  readonly first: number;
  readonly second: number;
}

/** How many neighbours are asked: a few stray points of the wrong kind don't turn the answer. */
const ASKED = 6;

/** The distances of the point at `values[at..]` to both kinds. */
export function nearestDistances(kinds: TwoKinds, values: Float32Array, at: number): NearestDistances {
  return { first: toKind(kinds.first, kinds, values, at), second: toKind(kinds.second, kinds, values, at) };
}

const best = new Float64Array(ASKED);

function toKind(points: Float32Array, kinds: TwoKinds, values: Float32Array, at: number): number {
  const { size, scale } = kinds;
  best.fill(Number.POSITIVE_INFINITY);
  for (let p = 0; p < points.length; p += size) {
    let sum = 0;
    const worst = best[ASKED - 1]!;
    for (let i = 0; i < size && sum < worst; i++) {
      const difference = (points[p + i]! - values[at + i]!) / scale[i]!;
      sum += difference * difference;
    }
    if (sum >= worst) continue;
    let place = ASKED - 1;
    while (place > 0 && best[place - 1]! > sum) {
      best[place] = best[place - 1]!;
      place--;
    }
    best[place] = sum;
  }
  let total = 0;
  for (let i = 0; i < ASKED; i++) total += Math.sqrt(best[i]!);
  return total / ASKED;
}
