/*
 * A piece, its mirror image and itself turned upside down are the same work seen from other sides, so they get the same
 * rows: the drawing is first turned the way round that comes first in a fixed order, stepped there, and turned back.
 */

export interface Orientation {
  readonly flipX: boolean;
  readonly flipY: boolean;
}

export const AS_IT_LIES: Orientation = { flipX: false, flipY: false };

const TURNS: readonly Orientation[] = [
  AS_IT_LIES,
  { flipX: true, flipY: false },
  { flipX: false, flipY: true },
  { flipX: true, flipY: true },
];

/** The cells as they lie when turned; turning twice gives the first again. */
export function turned<Cells extends Uint8Array | Uint16Array>(cells: Cells, ends: number, by: Orientation): Cells {
  if (!by.flipX && !by.flipY) return cells;
  const passes = cells.length / ends;
  const result = cells.slice() as Cells;
  for (let pass = 0; pass < passes; pass++) {
    const from = (by.flipY ? passes - 1 - pass : pass) * ends;
    const to = pass * ends;
    for (let end = 0; end < ends; end++) result[to + end] = cells[from + (by.flipX ? ends - 1 - end : end)]!;
  }
  return result;
}

/** Negative when the cells seen by `one` come before those seen by `other`. */
function compareTurned(cells: Uint16Array, ends: number, one: Orientation, other: Orientation): number {
  const passes = cells.length / ends;
  for (let pass = 0; pass < passes; pass++) {
    const rowOne = (one.flipY ? passes - 1 - pass : pass) * ends;
    const rowOther = (other.flipY ? passes - 1 - pass : pass) * ends;
    for (let end = 0; end < ends; end++) {
      const difference =
        cells[rowOne + (one.flipX ? ends - 1 - end : end)]! - cells[rowOther + (other.flipX ? ends - 1 - end : end)]!;
      if (difference !== 0) return difference;
    }
  }
  return 0;
}

/**
 * How far areas begin level and end in points rather than the other way about: the sum of squares of level lower edges
 * less that of level upper ones. Steps are counted from where an edge begins, so they come out most even from a level
 * foot.
 */
function levelFeet(cells: Uint16Array, ends: number): number {
  const passes = cells.length / ends;
  let sum = 0;
  for (let pass = 1; pass < passes; pass++) {
    const here = pass * ends;
    const below = here - ends;
    for (let end = 0; end < ends; ) {
      if (cells[here + end] === cells[below + end]) {
        end++;
        continue;
      }
      const start = end;
      while (
        end < ends &&
        cells[here + end] === cells[here + start] &&
        cells[below + end] === cells[below + start] &&
        cells[here + end] !== cells[below + end]
      ) {
        end++;
      }
      // A foot is level where the upper area ends at both sides with the change, a head where the lower one does.
      const foot =
        (start === 0 || cells[here + start - 1] !== cells[here + start]) &&
        (end === ends || cells[here + end] !== cells[here + start]);
      const head =
        (start === 0 || cells[below + start - 1] !== cells[below + start]) &&
        (end === ends || cells[below + end] !== cells[below + start]);
      if (foot && !head) sum += (end - start) ** 2;
      if (head && !foot) sum -= (end - start) ** 2;
    }
  }
  return sum;
}

/** The way round in which a drawing is stepped. */
export function firstOrientation(cells: Uint16Array, ends: number): Orientation {
  const level = levelFeet(cells, ends);
  let best: Orientation | null = null;
  for (const turn of TURNS) {
    if (level > 0 ? turn.flipY : level < 0 ? !turn.flipY : false) continue;
    if (best === null || compareTurned(cells, ends, turn, best) < 0) best = turn;
  }
  return best!;
}
