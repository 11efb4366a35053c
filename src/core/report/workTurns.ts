import type { Block, SequenceStep } from '../model/plan.ts';

/** One turn at the loom: two passes, or one where a block begins or ends with a half turn. */
export interface WorkTurn {
  /** Place of its block in the order of work. */
  readonly block: number;
  /** First row of the block this turn weaves. */
  readonly row: number;
  readonly passes: 1 | 2;
  /** Chart pass of the first row. */
  readonly pass: number;
  /** Ends the first pass spans, both included. */
  readonly left: number;
  readonly right: number;
  /** End on which the turn begins, and end round which it comes back. */
  readonly from: number;
  readonly to: number;
}

/** Turns of one block, one after another, over the same ends. */
export interface WorkStep {
  readonly block: number;
  /** First turn, as a place in the list of turns, and how many. */
  readonly firstTurn: number;
  readonly turns: number;
  readonly left: number;
  readonly right: number;
  /** What the edges do after the step, positive outward; null when the block ends here. */
  readonly moves: { readonly left: number; readonly right: number } | null;
}

/**
 * The order of work as a list of turns.
 * @param sequence how wefts that rise together alternate; empty where blocks are woven one after another
 */
export function workTurns(blocks: readonly Block[], sequence: readonly SequenceStep[]): WorkTurn[] {
  const together = new Set(sequence.map((step) => step.block));
  const turns: WorkTurn[] = [];
  const add = (block: number, row: number, passes: 1 | 2) => {
    const first = blocks[block]!.rows[row]!;
    turns.push({
      block,
      row,
      passes,
      pass: first.pass,
      left: Math.min(first.from, first.to),
      right: Math.max(first.from, first.to),
      from: first.from,
      to: first.to,
    });
  };
  let sequenced = false;
  for (const [block, { rows }] of blocks.entries()) {
    if (together.has(block)) {
      // All wefts that rise together are told at the first of their blocks.
      if (!sequenced) addSequence(sequence, add);
      sequenced = true;
      continue;
    }
    for (let row = 0; row < rows.length; row += 2) add(block, row, row + 1 < rows.length ? 2 : 1);
  }
  return turns;
}

function addSequence(sequence: readonly SequenceStep[], add: (block: number, row: number, passes: 1 | 2) => void) {
  for (let at = 0; at < sequence.length; ) {
    const { block, row } = sequence[at]!;
    const next = sequence[at + 1];
    const pair = next !== undefined && next.block === block && next.row === row + 1;
    add(block, row, pair ? 2 : 1);
    at += pair ? 2 : 1;
  }
}

/** Gathers turns into steps: a new one wherever the block or the ends change. */
export function workSteps(turns: readonly WorkTurn[]): WorkStep[] {
  const steps: WorkStep[] = [];
  for (const [index, turn] of turns.entries()) {
    const last = steps.at(-1);
    if (last && last.block === turn.block && last.left === turn.left && last.right === turn.right) {
      steps[steps.length - 1] = { ...last, turns: last.turns + 1 };
      continue;
    }
    if (last && last.block === turn.block) {
      const moves = { left: last.left - turn.left, right: turn.right - last.right };
      steps[steps.length - 1] = { ...last, moves };
    }
    steps.push({ block: turn.block, firstTurn: index, turns: 1, left: turn.left, right: turn.right, moves: null });
  }
  return steps;
}

/** The turn being woven after so many passes; the number of turns when all are done. */
export function turnAfterPasses(turns: readonly WorkTurn[], passesDone: number): number {
  let passes = 0;
  for (const [index, turn] of turns.entries()) {
    passes += turn.passes;
    if (passes > passesDone) return index;
  }
  return turns.length;
}

/** Passes done when the first `count` turns are done. */
export function passesOfTurns(turns: readonly WorkTurn[], count: number): number {
  let passes = 0;
  for (let index = 0; index < count; index++) passes += turns[index]?.passes ?? 0;
  return passes;
}

/** How many passes stand on each end after so many passes of the whole work: the fell, end by end. */
export function fellAfter(
  turns: readonly WorkTurn[],
  blocks: readonly Block[],
  ends: number,
  passesDone: number,
): Uint16Array {
  const fell = new Uint16Array(ends);
  let left = passesDone;
  for (const turn of turns) {
    for (let index = 0; index < turn.passes && left > 0; index++, left--) {
      const row = blocks[turn.block]!.rows[turn.row + index]!;
      for (let end = Math.min(row.from, row.to); end <= Math.max(row.from, row.to); end++) fell[end] = row.pass + 1;
    }
    if (left <= 0) break;
  }
  return fell;
}
