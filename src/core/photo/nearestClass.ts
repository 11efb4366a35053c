/** Points of two kinds, `size` numbers each, against which others are judged by their nearest neighbours. */
export interface TwoKinds {
  readonly size: number;
  readonly first: KindIndex;
  readonly second: KindIndex;
  /** One factor a number, so that all count alike. */
  readonly factor: Float64Array;
}

/** The points of one kind, scaled and in rising order of their first number: that in which they spread the most. */
interface KindIndex {
  readonly count: number;
  /** Which of the given numbers stands at each place, the most spread first. */
  readonly order: Uint8Array;
  readonly points: Float64Array;
}

export interface NearestDistances {
  /** Mean distance to the nearest few of each kind, in scaled units. */
  readonly first: number;
  readonly second: number;
}

/** How many neighbours are asked: a few stray points of the wrong kind don't turn the answer. */
const ASKED = 6;

/**
 * Makes both kinds ready for asking.
 * @param first,second `size` numbers a point; `scale` one divisor a number.
 */
export function twoKinds(size: number, first: Float32Array, second: Float32Array, scale: Float32Array): TwoKinds {
  const factor = Float64Array.from(scale, (value) => 1 / value);
  return { size, first: indexOf(first, size, factor), second: indexOf(second, size, factor), factor };
}

function indexOf(values: Float32Array, size: number, factor: Float64Array): KindIndex {
  const count = values.length / size;
  const spread = Array.from(factor, (each, i) => {
    let sum = 0;
    let squares = 0;
    for (let p = i; p < values.length; p += size) {
      sum += values[p]! * each;
      squares += (values[p]! * each) ** 2;
    }
    return squares / count - (sum / count) ** 2;
  });
  const order = Uint8Array.from(spread.keys()).sort((a, b) => spread[b]! - spread[a]!);
  const leading = order[0]!;
  const rising = Array.from({ length: count }, (_, p) => p);
  rising.sort((a, b) => values[a * size + leading]! - values[b * size + leading]!);
  const points = new Float64Array(count * size);
  rising.forEach((from, to) => {
    for (let i = 0; i < size; i++) points[to * size + i] = values[from * size + order[i]!]! * factor[order[i]!]!;
  });
  return { count, order, points };
}

const nearest = new Float64Array(ASKED);
/** The point that is asked for, its numbers in the order of the kind. */
let asked = new Float64Array(0);

/** The distances of the point at `values[at..]` to both kinds. */
export function nearestDistances(kinds: TwoKinds, values: Float32Array, at: number): NearestDistances {
  if (asked.length !== kinds.size) asked = new Float64Array(kinds.size);
  return { first: toKind(kinds.first, kinds, values, at), second: toKind(kinds.second, kinds, values, at) };
}

/** Outward from the asked point's place in the order, until all that is left lies too far off by that number alone. */
function toKind(kind: KindIndex, { size, factor }: TwoKinds, values: Float32Array, at: number): number {
  const { count, order, points } = kind;
  const point = asked;
  for (let i = 0; i < size; i++) point[i] = values[at + order[i]!]! * factor[order[i]!]!;
  const lead = point[0]!;
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (points[middle * size]! < lead) low = middle + 1;
    else high = middle;
  }
  let below = low - 1;
  let above = low;
  let worst = Number.POSITIVE_INFINITY;
  nearest.fill(worst);
  while (below >= 0 || above < count) {
    const under = below >= 0 ? lead - points[below * size]! : Number.POSITIVE_INFINITY;
    const over = above < count ? points[above * size]! - lead : Number.POSITIVE_INFINITY;
    const gap = Math.min(under, over);
    let sum = gap * gap;
    if (sum >= worst) break;
    const p = (under < over ? below-- : above++) * size;
    for (let i = 1; i < size && sum < worst; i++) {
      const difference = points[p + i]! - point[i]!;
      sum += difference * difference;
    }
    if (sum >= worst) continue;
    let place = ASKED - 1;
    while (place > 0 && nearest[place - 1]! > sum) {
      nearest[place] = nearest[place - 1]!;
      place--;
    }
    nearest[place] = sum;
    worst = nearest[ASKED - 1]!;
  }
  let total = 0;
  for (let i = 0; i < ASKED; i++) total += Math.sqrt(nearest[i]!);
  return total / ASKED;
}
