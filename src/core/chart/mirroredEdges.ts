import type { RowRuns } from './rowRuns.ts';

/**
 * Which boundaries of a stretch have a mirror image in it: another boundary, about any upright line, that lies as far to
 * the other side on every row looked at, to an end. Rows of the stretch run from `foot` to `head`, `head` not included.
 * @returns 1 for a boundary with an image, by its place from the left.
 */
export function mirroredEdges(runs: RowRuns, foot: number, head: number): Uint8Array {
  const count = runs.offset[foot + 1]! - runs.offset[foot]! - 1;
  const mirrored = new Uint8Array(Math.max(0, count));
  if (head - foot < FEWEST_ROWS) return mirrored;
  const rows = LOOKED_AT.map((share) => foot + Math.round((head - 1 - foot) * share));
  const placeOf = (boundary: number, row: number): number => runs.start[runs.offset[row]! + boundary + 1]!;
  for (let one = 0; one < count; one++) {
    for (let two = one + 1; two < count && mirrored[one] === 0; two++) {
      let least = Number.POSITIVE_INFINITY;
      let most = Number.NEGATIVE_INFINITY;
      for (const row of rows) {
        const sum = placeOf(one, row) + placeOf(two, row);
        least = Math.min(least, sum);
        most = Math.max(most, sum);
      }
      if (most - least > 1) continue;
      mirrored[one] = 1;
      mirrored[two] = 1;
    }
  }
  return mirrored;
}

/** In a stretch of fewer rows two edges look alike by chance. */
export const FEWEST_ROWS = 6;
/** Shares of a stretch's height at which boundaries are compared. */
const LOOKED_AT = [0, 0.13, 0.26, 0.39, 0.5, 0.61, 0.74, 0.87, 1];
