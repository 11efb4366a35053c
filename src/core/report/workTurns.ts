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
  /** Ends the turn goes over, both included. */
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
  const told = new Set<number>();
  const turns: WorkTurn[] = [];
  for (const [block, { rows, together }] of blocks.entries()) {
    if (told.has(block)) continue;
    // Wefts that rise together are told at the first of their blocks.
    const group = new Set([block, ...together]);
    for (const member of group) told.add(member);
    const steps =
      together.length > 0
        ? sequence.filter((step) => group.has(step.block))
        : rows.map((_, row): SequenceStep => ({ block, row }));
    turns.push(...turnsOf(blocks, steps));
  }
  return turns;
}

/** Pairs the passes of each weft into turns where they follow one another. */
function turnsOf(blocks: readonly Block[], steps: readonly SequenceStep[]): WorkTurn[] {
  const turns: WorkTurn[] = [];
  for (let at = 0; at < steps.length; ) {
    const { block, row } = steps[at]!;
    const next = steps[at + 1];
    const passes = next !== undefined && next.block === block && next.row === row + 1 ? 2 : 1;
    const rows = blocks[block]!.rows;
    const span = rows[passes === 2 && toldByReturn(rows) ? row + 1 : row]!;
    turns.push({
      block,
      row,
      passes,
      pass: rows[row]!.pass,
      left: Math.min(span.from, span.to),
      right: Math.max(span.from, span.to),
      from: rows[row]!.from,
      to: rows[row]!.to,
    });
    at += passes;
  }
  return turns;
}

/**
 * The two edges of a block step one pass apart, so the ends a turn goes over are those of its way out or of its way
 * back: whichever of the two tells the block in fewer steps.
 */
function toldByReturn(rows: Block['rows']): boolean {
  const changes = (first: number) => {
    let count = 0;
    for (let row = first + 2; row < rows.length; row += 2) {
      const [now, before] = [rows[row]!, rows[row - 2]!];
      const moved = (edge: (one: number, other: number) => number) =>
        edge(now.from, now.to) !== edge(before.from, before.to);
      if (moved(Math.min) || moved(Math.max)) count++;
    }
    return count;
  };
  return changes(1) < changes(0);
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
