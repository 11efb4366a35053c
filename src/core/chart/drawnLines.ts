import type { VisibleSpan } from './visibleSpans.ts';

/** Where the drawing changes yarn along a level line: at one place, or over a sliver too thin to be woven there. */
export interface DrawnChange {
  readonly from: number;
  readonly to: number;
  readonly left: number;
  readonly right: number;
  /** How far the two spans that meet there reach. */
  readonly leftFrom: number;
  readonly rightTo: number;
}

/** The changes of yarn along a level line, from left to right. @param yarns the yarn of every area. */
export function changesBetween(spans: readonly VisibleSpan[], yarns: readonly number[]): readonly DrawnChange[] {
  const changes: DrawnChange[] = [];
  const yarnAt = (at: number): number => yarns[spans[at]!.area]!;
  for (let at = 0, began = 0; at + 1 < spans.length; at++) {
    if (yarnAt(at) === yarnAt(at + 1)) continue;
    let last = at + 1;
    while (last + 1 < spans.length && yarnAt(last + 1) === yarnAt(at + 1)) last++;
    changes.push({
      from: spans[at]!.to,
      to: spans[at + 1]!.from,
      left: yarnAt(at),
      right: yarnAt(at + 1),
      leftFrom: spans[began]!.from,
      rightTo: spans[last]!.to,
    });
    began = at + 1;
  }
  return changes;
}

/** The spans wide enough to hold an end's middle. @param ends middles of the ends, mm, rising. */
export function wideSpans(spans: readonly VisibleSpan[], ends: Float64Array): readonly VisibleSpan[] {
  let end = 0;
  return spans.filter(({ from, to }) => {
    while (end < ends.length && ends[end]! < from) end++;
    return end < ends.length && ends[end]! < to;
  });
}

/** How far x lies from a change, mm; 0 within a sliver. */
const distance = (change: DrawnChange, x: number): number => Math.max(0, change.from - x, x - change.to);

/** The one nearest to x; null where there is none. */
function nearest(changes: readonly DrawnChange[], x: number): DrawnChange | null {
  let found: DrawnChange | null = null;
  for (const change of changes) if (found === null || distance(change, x) < distance(found, x)) found = change;
  return found;
}

/** Whether two changes on neighbouring passes are one line: the same two spans meet at both. */
const goesOn = (one: DrawnChange, other: DrawnChange): boolean =>
  Math.max(one.leftFrom, other.leftFrom) < Math.min(one.from, other.from) &&
  Math.max(one.to, other.to) < Math.min(one.rightTo, other.rightTo);

/** A turn is two passes. */
const TURN = 2;

/**
 * How far x lies from the drawn line between two yarns at a pass, and from all that the line runs through in one turn
 * below and above, mm. Infinite where no such line is drawn.
 */
export function distancesToLine(
  lines: readonly (readonly DrawnChange[])[],
  pass: number,
  left: number,
  right: number,
  x: number,
): { readonly here: number; readonly inTurn: number } {
  const between = (row: number) => (lines[row] ?? []).filter((line) => line.left === left && line.right === right);
  const at = nearest(between(pass), x);
  const here = at === null ? Number.POSITIVE_INFINITY : distance(at, x);
  let inTurn = here;
  for (const way of [-1, 1]) {
    // The line on this pass, and one that ends within the turn or begins in it.
    for (let begins = 0; begins <= TURN; begins++) {
      let line = begins === 0 ? at : nearest(between(pass + way * begins), x);
      if (line === null) continue;
      let { from, to } = line;
      for (let away = begins; ; ) {
        inTurn = Math.min(inTurn, Math.max(0, from - x, x - to));
        away++;
        const last: DrawnChange = line;
        if (away > TURN) break;
        line = nearest(
          between(pass + way * away).filter((next) => goesOn(last, next)),
          (last.from + last.to) / 2,
        );
        if (line === null) break;
        from = Math.min(from, line.from);
        to = Math.max(to, line.to);
      }
    }
  }
  return { here, inTurn };
}
