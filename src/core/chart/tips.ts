import { type RowRuns, runStop } from './rowRuns.ts';

/*
 * An area that closes to a point has its last turn at both edges only if it is an odd number of passes tall: its two
 * edges turn one pass apart. So where the drawing would cut that last turn in half at one edge, the point is woven one
 * pass taller, and both edges have the same turns.
 */

/** The top of an area that closes to a point, ready for one pass more. */
export interface Tip {
  /** Its place among the areas of its last row, from the left. */
  readonly at: number;
  /** Its ends on its last drawn row, `high` included. */
  readonly low: number;
  readonly high: number;
  readonly label: number;
  /** Way its weft would travel on the next pass. */
  readonly right: number;
}

/** Widest point, beyond what the edges close by in a turn, that still counts as one. */
const POINT_WIDTH = 2;

/**
 * The tips among the areas that end at `head`: those whose edges closed in, with half a turn left to make.
 * @param place boundaries as stepped on the row under `head`, one between each two areas.
 * @param anchor parity of the row from which each boundary's turns are counted.
 * @param steps whether a boundary steps at all.
 */
export function tipsUnder(
  runs: RowRuns,
  head: number,
  place: Int32Array,
  bits: Uint8Array,
  anchor: Uint8Array,
  steps: (boundary: number) => boolean,
): readonly Tip[] {
  const tips: Tip[] = [];
  if (head < 4 || head >= runs.rows) return tips;
  const last = head - 1;
  const base = runs.offset[last]!;
  const count = bits.length;
  for (let at = 0; at < count; at++) {
    const from = runs.start[base + at]!;
    const stop = runStop(runs, last, base + at);
    if (goesOnAbove(runs, head, runs.label[base + at]!, from, stop)) continue;
    // Half a turn is left at an edge whose turns start on the upper row of the anchor's turns.
    const leftLeaves =
      at > 0 && steps(at - 1) && ((last + anchor[at - 1]!) & 1) === 1 && ((last + bits[at]!) & 1) === 1;
    const rightLeaves =
      at + 1 < count && steps(at) && ((last + anchor[at]!) & 1) === 1 && ((last + bits[at]!) & 1) === 0;
    if (!leftLeaves && !rightLeaves) continue;
    const earlier = runs.offset[last - 2]!;
    const sameShape = runs.offset[last - 1]! - earlier === count && runs.label[earlier + at] === runs.label[base + at];
    const width = stop - from;
    const closes = sameShape ? runStop(runs, last - 2, earlier + at) - runs.start[earlier + at]! - width : 0;
    if (width > POINT_WIDTH + Math.max(0, closes)) continue;
    tips.push({
      at,
      low: at > 0 ? place[at - 1]! : 0,
      high: (at < place.length ? place[at]! : runs.ends) - 1,
      label: runs.label[base + at]!,
      right: ((head + bits[at]!) & 1) === 0 ? 1 : 0,
    });
  }
  return tips;
}

function goesOnAbove(runs: RowRuns, head: number, label: number, from: number, stop: number): boolean {
  for (let index = runs.offset[head]!; index < runs.offset[head + 1]!; index++) {
    if (runs.label[index] === label && runs.start[index]! < stop && runStop(runs, head, index) > from) return true;
  }
  return false;
}

/**
 * Weaves each tip one pass taller on row `row`, where the wefts beside it go on as they were and nothing else begins
 * over it.
 */
export function finishTips(
  tips: readonly Tip[],
  labels: Uint16Array,
  right: Uint8Array,
  ends: number,
  row: number,
): void {
  const base = row * ends;
  for (const { low, high, label, right: way } of tips) {
    const over = labels[base + low]!;
    let clear = over !== label;
    for (let end = low; end <= high && clear; end++) clear = labels[base + end] === over;
    for (const beside of [low - 1, high + 1]) {
      if (!clear || beside < 0 || beside >= ends) continue;
      const below = base - ends + beside;
      // The neighbour's weft must be the same one, turning as it did.
      clear =
        labels[base + beside] === labels[below] &&
        labels[base + beside] === over &&
        right[base + beside] !== right[below];
    }
    if (!clear) continue;
    labels.fill(label, base + low, base + high + 1);
    right.fill(way, base + low, base + high + 1);
  }
}
