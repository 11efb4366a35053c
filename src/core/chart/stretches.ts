import { type RowRuns, runStop } from './rowRuns.ts';

/** Where the runs of one row go on in the next: `first`/`last` are runs of the lower row, -1 when there is none. */
export interface Links {
  readonly first: Int32Array;
  readonly last: Int32Array;
}

/** For every run of `row`, the runs of the same label right under it. */
export function linkDown(runs: RowRuns, row: number): Links {
  const count = runs.offset[row + 1]! - runs.offset[row]!;
  const first = new Int32Array(count).fill(-1);
  const last = new Int32Array(count).fill(-1);
  let under = runs.offset[row - 1]!;
  const underEnd = runs.offset[row]!;
  for (let at = 0; at < count; at++) {
    const index = runs.offset[row]! + at;
    const from = runs.start[index]!;
    const stop = runStop(runs, row, index);
    while (runStop(runs, row - 1, under) <= from) under++;
    for (let other = under; other < underEnd && runs.start[other]! < stop; other++) {
      if (runs.label[other] !== runs.label[index]) continue;
      if (first[at] === -1) first[at] = other - runs.offset[row - 1]!;
      last[at] = other - runs.offset[row - 1]!;
    }
  }
  return { first, last };
}

/** Whether two neighbouring rows have the same areas side by side, each standing on itself. */
export function sameStretch(runs: RowRuns, row: number): boolean {
  const below = runs.offset[row - 1]!;
  const here = runs.offset[row]!;
  const count = runs.offset[row + 1]! - here;
  if (here - below !== count) return false;
  for (let at = 0; at < count; at++) {
    if (runs.label[below + at] !== runs.label[here + at]) return false;
    if (runs.start[below + at]! >= runStop(runs, row, here + at)) return false;
    if (runs.start[here + at]! >= runStop(runs, row - 1, below + at)) return false;
  }
  return true;
}
