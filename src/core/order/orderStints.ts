import type { Part } from './parts.ts';
import type { WeftRow, Wefts } from './wefts.ts';

/** Rows of one part woven without stopping: what the plan calls a block. */
export interface Stint {
  readonly part: number;
  /** Rows of the part's weft, both included. */
  readonly first: number;
  readonly last: number;
  /** Why it stops where it does. */
  readonly stops: Stop;
  /** Stints of one rise are woven together, row by row in turn. */
  readonly rise: number;
}

export type Stop = 'part ends' | 'rests on a neighbour' | 'hill limit' | 'keeps level' | 'waits for its neighbour';

/** One row of one stint, in weaving order. */
export interface WovenRow {
  readonly stint: number;
  readonly row: number;
}

export interface OrderOfWork {
  readonly stints: readonly Stint[];
  /** Every row of the piece in the order woven. */
  readonly rows: readonly WovenRow[];
  /** Whether any wefts rise together. */
  readonly together: boolean;
}

export interface OrderRules {
  readonly ends: number;
  /** Passes a row may stand over the cloth beside it. */
  readonly hillLimit: number;
  /** Whether the wefts on both sides of the border left of a cell must rise together. */
  readonly linked: (cell: number) => boolean;
  /** The mirror image of each part, -1 where it has none. */
  readonly partner: Int32Array;
  /** Passes that stand on each end already; none unless said. */
  readonly fell?: ArrayLike<number>;
}

/** A part's rows as far as they can be woven from here, or several parts' that rise together. */
interface Rise {
  readonly log: readonly { readonly part: number; readonly row: number }[];
  readonly stops: ReadonlyMap<number, Stop>;
}

/**
 * The order of work. The cloth so far is a height for every end; a row can be woven when everything right under it is.
 * From what can be begun within half the hill limit of the lowest (so hills stay low), the one that can go furthest is
 * taken, the yarn in hand before another; of equals the leftmost. It is woven until it would have to lie on something
 * not yet woven, or would stand taller than the hill limit over the cloth beside it. A part's mirror image follows it at
 * once, to the same height. Along a border where wefts rise together neither may get ahead of the cloth beside it, so they are woven in turn.
 * What lies under comes first by construction, and the lowest row not yet woven can always be woven, so the order never
 * sticks: where two areas lean on each other in turn, both are cut.
 */
export function orderStints(wefts: Wefts, parts: readonly Part[], rules: OrderRules): OrderOfWork {
  const { ends, partner } = rules;
  const fell = rules.fell === undefined ? new Int32Array(ends) : Int32Array.from(rules.fell);
  const partsOfWeft = new Map<number, number[]>();
  parts.forEach((part, index) => {
    const list = partsOfWeft.get(part.weft);
    if (list === undefined) partsOfWeft.set(part.weft, [index]);
    else list.push(index);
  });
  const rowAt = (part: number, row: number): WeftRow => wefts.wefts[parts[part]!.weft]!.rows[row]!;
  const isWoven = (row: WeftRow): boolean => fell[row.low]! > row.pass;
  const next = parts.map((part, index) => {
    let row = part.first;
    while (row <= part.last && isWoven(rowAt(index, row))) row++;
    return row;
  });
  const labelOf = (part: number): number => wefts.wefts[parts[part]!.weft]!.label;

  /** What keeps a row from being woven now; null when nothing does. */
  const hindrance = (row: WeftRow, topPass: number): Stop | null => {
    for (let end = row.low; end <= row.high; end++) if (fell[end] !== row.pass) return 'rests on a neighbour';
    if (row.pass > topPass) return 'keeps level';
    for (const [beside, border] of [
      [row.low - 1, row.low],
      [row.high + 1, row.high + 1],
    ] as const) {
      if (beside < 0 || beside >= ends) continue;
      if (fell[beside]! < row.pass && rules.linked(row.pass * ends + border)) return 'waits for its neighbour';
      if (row.pass + 1 - fell[beside]! > rules.hillLimit) return 'hill limit';
    }
    return null;
  };
  const lay = (row: WeftRow): void => {
    fell.fill(row.pass + 1, row.low, row.high + 1);
  };

  const open = new Set<number>();
  for (const list of partsOfWeft.values()) {
    const begins = list.find((part) => next[part]! <= parts[part]!.last);
    if (begins !== undefined) open.add(begins);
  }

  /** The open part whose next row lies beside this row where the two must rise together, not yet as high. */
  const waitedFor = (row: WeftRow): number => {
    for (const [beside, border] of [
      [row.low - 1, row.low],
      [row.high + 1, row.high + 1],
    ] as const) {
      if (beside < 0 || beside >= ends || fell[beside]! >= row.pass) continue;
      if (!rules.linked(row.pass * ends + border)) continue;
      for (const part of open) {
        if (next[part]! > parts[part]!.last) continue;
        const other = rowAt(part, next[part]!);
        if (other.pass < row.pass && other.low <= beside && beside <= other.high) return part;
      }
    }
    return -1;
  };

  /** Weaves as far as can be from one part, taking in neighbours that must rise with it; `undo` leaves all as it was. */
  const rise = (seed: number, topPass: number, undo: boolean): Rise => {
    const active = [seed];
    const log: { part: number; row: number }[] = [];
    const stops = new Map<number, Stop>();
    let current = seed;
    for (;;) {
      let chosen = -1;
      let chosenPass = Number.POSITIVE_INFINITY;
      for (const part of active) {
        if (next[part]! > parts[part]!.last) continue;
        const row = rowAt(part, next[part]!);
        const stop = hindrance(row, topPass);
        if (stop !== null) {
          stops.set(part, stop);
          continue;
        }
        if (row.pass < chosenPass || (row.pass === chosenPass && part === current)) {
          chosen = part;
          chosenPass = row.pass;
        }
      }
      if (chosen !== -1) {
        lay(rowAt(chosen, next[chosen]!));
        log.push({ part: chosen, row: next[chosen]! });
        next[chosen]!++;
        if (next[chosen]! > parts[chosen]!.last) stops.set(chosen, 'part ends');
        current = chosen;
        continue;
      }
      const fetched = active
        .filter((part) => stops.get(part) === 'waits for its neighbour' && next[part]! <= parts[part]!.last)
        .map((part) => waitedFor(rowAt(part, next[part]!)))
        .find((part) => part !== -1 && !active.includes(part));
      if (fetched === undefined) break;
      active.push(fetched);
    }
    if (undo) {
      for (let at = log.length - 1; at >= 0; at--) {
        const { part, row } = log[at]!;
        const laid = rowAt(part, row);
        fell.fill(laid.pass, laid.low, laid.high + 1);
        next[part] = row;
      }
    }
    return { log, stops };
  };

  const stints: Stint[] = [];
  const rows: WovenRow[] = [];
  let together = false;
  let rises = 0;
  const weave = (seed: number, topPass: number): void => {
    const { log, stops } = rise(seed, topPass, false);
    const stintOf = new Map<number, number>();
    for (const { part, row } of log) {
      let stint = stintOf.get(part);
      if (stint === undefined) {
        stint = stints.push({ part, first: row, last: row, stops: stops.get(part) ?? 'part ends', rise: rises }) - 1;
        stintOf.set(part, stint);
      } else stints[stint] = { ...stints[stint]!, last: row };
      rows.push({ stint, row: row - stints[stint]!.first });
    }
    rises++;
    together ||= stintOf.size > 1;
    for (const part of stintOf.keys()) {
      if (next[part]! <= parts[part]!.last) continue;
      open.delete(part);
      const list = partsOfWeft.get(parts[part]!.weft)!;
      const after = list[list.indexOf(part) + 1];
      if (after !== undefined) open.add(after);
    }
  };

  while (open.size > 0) {
    const before = stints.at(-1);
    const image = before === undefined ? -1 : partner[before.part]!;
    if (before !== undefined && image !== -1 && open.has(image)) {
      const start = rowAt(image, next[image]!);
      const level = rowAt(before.part, before.last).pass + 1;
      const sideBySide = Math.abs(start.pass - rowAt(before.part, before.first).pass) <= 2;
      if (sideBySide && hindrance(start, level) === null) {
        weave(image, level);
        continue;
      }
    }
    let lowest = Number.POSITIVE_INFINITY;
    for (const part of open) lowest = Math.min(lowest, rowAt(part, next[part]!).pass);
    const label = before === undefined ? -1 : labelOf(before.part);
    let best = -1;
    let bestScore = Number.NEGATIVE_INFINITY;
    for (const part of open) {
      const row = rowAt(part, next[part]!);
      if (row.pass > lowest + rules.hillLimit / 2 || hindrance(row, Number.POSITIVE_INFINITY) !== null) continue;
      const far = rise(part, Number.POSITIVE_INFINITY, true).log.length;
      const inHand = labelOf(part) === label ? YARN_IN_HAND : 0;
      const score = Math.floor((far + inHand) / MUCH_THE_SAME) * 4096 - row.low;
      if (score > bestScore) {
        best = part;
        bestScore = score;
      }
    }
    weave(best, Number.POSITIVE_INFINITY);
  }
  return { stints, rows, together };
}

/** Parts that can go equally far to within so many passes are taken from the left. */
const MUCH_THE_SAME = 4;
/** Passes a part with the yarn in hand may reach less far than another and still be taken first. */
const YARN_IN_HAND = 12;
