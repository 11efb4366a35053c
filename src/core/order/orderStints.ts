import type { Part } from './parts.ts';
import type { WeftRow, Wefts } from './wefts.ts';

/** Rows of one part woven without stopping: what the plan calls a block. */
export interface Stint {
  readonly part: number;
  readonly first: number;
  readonly last: number;
  /** Why it stops short of its part's last row. */
  readonly stops: 'part ends' | 'rests on a neighbour' | 'hill limit' | 'keeps level with its partner';
}

/**
 * The order of work. The cloth so far is a height for every end; a row can be woven when everything right under it is.
 * From what can be begun, the lowest is taken (hills stay low), and of those at one height the one that can go furthest;
 * then the yarn in hand; then the leftmost. It is woven until it would have to lie on something not yet woven, or would
 * stand taller than `hillLimit` passes over the cloth beside it. A part's mirror image follows it at once, to the same
 * height. What lies under comes first by construction, and the lowest row not yet woven can always be woven, so the
 * order never sticks: where two areas lean on each other in turn, both are cut.
 */
export function orderStints(
  wefts: Wefts,
  parts: readonly Part[],
  partner: Int32Array,
  ends: number,
  hillLimit: number,
): readonly Stint[] {
  const fell = new Int32Array(ends);
  const next = parts.map((part) => part.first);
  const partsOfWeft = new Map<number, number[]>();
  parts.forEach((part, index) => {
    const list = partsOfWeft.get(part.weft);
    if (list === undefined) partsOfWeft.set(part.weft, [index]);
    else list.push(index);
  });
  const rowAt = (part: number, row: number): WeftRow => wefts.wefts[parts[part]!.weft]!.rows[row]!;
  const rests = (row: WeftRow): boolean => {
    for (let end = row.low; end <= row.high; end++) if (fell[end] !== row.pass) return false;
    return true;
  };
  const isHill = (row: WeftRow): boolean => {
    let beside = row.pass;
    if (row.low > 0) beside = Math.min(beside, fell[row.low - 1]!);
    if (row.high < ends - 1) beside = Math.min(beside, fell[row.high + 1]!);
    return row.pass + 1 - beside > hillLimit;
  };
  const lay = (row: WeftRow): void => {
    fell.fill(row.pass + 1, row.low, row.high + 1);
  };

  /** How far a part can go from here, without weaving it. */
  const reach = (part: number, topPass: number): { readonly last: number; readonly stops: Stint['stops'] } => {
    const first = next[part]!;
    let last = first - 1;
    let stops: Stint['stops'] = 'part ends';
    while (last < parts[part]!.last) {
      const row = rowAt(part, last + 1);
      stops = !rests(row)
        ? 'rests on a neighbour'
        : isHill(row)
          ? 'hill limit'
          : row.pass > topPass
            ? 'keeps level with its partner'
            : 'part ends';
      if (stops !== 'part ends') break;
      lay(row);
      last++;
    }
    for (let row = last; row >= first; row--) {
      const laid = rowAt(part, row);
      fell.fill(laid.pass, laid.low, laid.high + 1);
    }
    return { last, stops };
  };

  const stints: Stint[] = [];
  const open = new Set<number>();
  for (const list of partsOfWeft.values()) open.add(list[0]!);
  const weave = (part: number, last: number, stops: Stint['stops']): void => {
    stints.push({ part, first: next[part]!, last, stops });
    for (let row = next[part]!; row <= last; row++) lay(rowAt(part, row));
    next[part] = last + 1;
    if (last < parts[part]!.last) return;
    open.delete(part);
    const list = partsOfWeft.get(parts[part]!.weft)!;
    const after = list[list.indexOf(part) + 1];
    if (after !== undefined) open.add(after);
  };

  while (open.size > 0) {
    const before = stints.at(-1);
    const image = before === undefined ? -1 : partner[before.part]!;
    if (image !== -1 && open.has(image)) {
      const start = rowAt(image, next[image]!).pass;
      if (Math.abs(start - rowAt(before!.part, before!.first).pass) <= 2 && rests(rowAt(image, next[image]!))) {
        const { last, stops } = reach(image, rowAt(before!.part, before!.last).pass + 1);
        if (last >= next[image]!) {
          weave(image, last, stops);
          continue;
        }
      }
    }
    let lowest = Number.POSITIVE_INFINITY;
    for (const part of open) {
      const row = rowAt(part, next[part]!);
      if (row.pass < lowest && rests(row)) lowest = row.pass;
    }
    const label = before === undefined ? -1 : wefts.wefts[parts[before.part]!.weft]!.label;
    let best = -1;
    let bestReach: ReturnType<typeof reach> | null = null;
    let bestScore = Number.NEGATIVE_INFINITY;
    for (const part of open) {
      const row = rowAt(part, next[part]!);
      if (row.pass > lowest + 2 || !rests(row)) continue;
      const far = reach(part, Number.POSITIVE_INFINITY);
      if (far.last < next[part]!) continue;
      const sameYarn = wefts.wefts[parts[part]!.weft]!.label === label ? 6 : 0;
      const score = (far.last - next[part]! + sameYarn) * 4096 - row.low;
      if (score > bestScore) {
        best = part;
        bestReach = far;
        bestScore = score;
      }
    }
    weave(best, bestReach!.last, bestReach!.stops);
  }
  return stints;
}
