import type { BlockRow, TurnStep } from '../model/plan.ts';

/** A step, with where the edge stands during it and how high it reaches. */
export interface EdgeStep extends TurnStep {
  readonly end: number;
  /** The pass after the step's last: the step is this many passes up when it is done. */
  readonly topPass: number;
}

/**
 * The turns at one edge of a block. The weft reaches an edge on the pass that arrives and on the pass that leaves, so a
 * turn there is that pair; where the block begins or finishes with one pass at this edge it is half a turn, written
 * apart.
 * @param rows in the order woven, each beginning on the end where the last stopped.
 * @param startsLeft whether the first row begins at the left edge (a row over one end doesn't say).
 * @returns the steps upward: turns where the edge stands, then the ends it moves, positive outward; 0 after the last.
 */
export function edgeSteps(rows: readonly BlockRow[], startsLeft: boolean, side: 'left' | 'right'): readonly EdgeStep[] {
  const outward = side === 'right' ? 1 : -1;
  const steps: { turns: number; ends: number; topPass: number; end: number }[] = [];
  const add = (turns: number, row: BlockRow): void => {
    const end = side === 'right' ? Math.max(row.from, row.to) : Math.min(row.from, row.to);
    const last = steps.at(-1);
    if (last !== undefined && last.end === end && turns === 1 && last.turns >= 1) {
      last.turns += 1;
      last.topPass = row.pass + 1;
      return;
    }
    if (last !== undefined) last.ends = (end - last.end) * outward;
    steps.push({ turns, ends: 0, topPass: row.pass + 1, end });
  };
  let at = 0;
  if (startsLeft === (side === 'left')) add(0.5, rows[at++]!);
  for (; at + 1 < rows.length; at += 2) add(1, rows[at + 1]!);
  if (at < rows.length) add(0.5, rows[at]!);
  return steps.map((step) => ({ ...step, ends: step.ends === 0 ? 0 : step.ends }));
}
