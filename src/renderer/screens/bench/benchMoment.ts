import type { Work } from '../../state/useWork.ts';
import type { Words } from '../../words/en.ts';

/** What the bench says at one turn. */
export interface BenchMoment {
  readonly block: number;
  readonly stepIndex: number;
  readonly turnInStep: number;
  readonly turnsInStep: number;
  readonly turnInBlock: number;
  readonly turnsInBlock: number;
  readonly single: boolean;
  readonly ends: number;
  /** Ends counted from 1, in words. */
  readonly span: string;
  /** What happens after this step. */
  readonly next: string;
  /** How the weft goes on this turn. */
  readonly going: string;
  /** A working length runs out on this turn. */
  readonly join: boolean;
}

/** @returns null when every turn is done. */
export function benchMoment(work: Work, turnIndex: number, words: Words['bench']): BenchMoment | null {
  const turn = work.turns[turnIndex];
  if (turn === undefined) return null;
  const block = work.plan.blocks[turn.block]!;
  const stepIndex = work.steps.findIndex(
    (step) => turnIndex >= step.firstTurn && turnIndex < step.firstTurn + step.turns,
  );
  const step = work.steps[stepIndex]!;
  const inBlock = work.turns.filter((other) => other.block === turn.block);
  const over = (turn.to + turn.pass) % 2 === work.plan.parity;
  const back = turn.passes === 2 ? block.rows[turn.row + 1]!.to : turn.to;
  return {
    block: turn.block,
    stepIndex,
    turnInStep: turnIndex - step.firstTurn + 1,
    turnsInStep: step.turns,
    turnInBlock: inBlock.indexOf(turn) + 1,
    turnsInBlock: inBlock.length,
    single: turn.passes === 1,
    ends: turn.right - turn.left + 1,
    span: words.span(turn.left + 1, turn.right + 1),
    next: nextWords(work, stepIndex, words),
    going:
      turn.passes === 2
        ? words.going(over, turn.to + 1, back + 1)
        : words.goingSingle((turn.from + turn.pass) % 2 === work.plan.parity, turn.from + 1, turn.to + 1),
    join: work.plan.joins.some(
      (join) => join.block === turn.block && join.pass >= turn.pass && join.pass < turn.pass + turn.passes,
    ),
  };
}

function nextWords(work: Work, stepIndex: number, words: Words['bench']): string {
  const step = work.steps[stepIndex]!;
  const moves = step.moves;
  if (moves !== null) {
    const lead = words.after(step.turns);
    if (moves.left === moves.right) {
      const both = moves.left < 0 ? words.inBoth(-moves.left) : words.outBoth(moves.left);
      return `${lead}: ${both}`;
    }
    const left = moves.left === 0 ? null : words.move('left', moves.left);
    const right = moves.right === 0 ? null : words.move('right', moves.right);
    return `${lead}: ${left !== null && right !== null ? words.both(left, right) : words.one(left ?? right ?? '')}`;
  }
  const following = work.steps[stepIndex + 1];
  return following === undefined ? words.lastOne : words.afterwards(work.plan.blocks[following.block]!.name);
}
