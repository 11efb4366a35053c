import type { BenchStep, StepPart } from '../../../core/report/benchSteps.ts';
import type { Work } from '../../state/useWork.ts';
import type { Words } from '../../words/en.ts';

/** What the bench says at one turn. */
export interface BenchMoment {
  readonly block: number;
  readonly stepIndex: number;
  /** Turns, or rounds where several wefts rise together. */
  readonly turnInStep: number;
  readonly turnsInStep: number;
  /** Wefts that rise together, in weaving order, and which of them comes now; null where a block is woven on its own. */
  readonly round: { readonly parts: readonly StepPart[]; readonly now: number } | null;
  readonly turnInBlock: number;
  readonly turnsInBlock: number;
  readonly single: boolean;
  readonly ends: number;
  /** Ends it goes over, counted from 1, both included. */
  readonly from: number;
  readonly to: number;
  /** The same in words. */
  readonly span: string;
  /** What happens after this step. */
  readonly next: string;
  /** How the weft goes on this turn. */
  readonly going: string;
  /** A working length runs out on this turn. */
  readonly join: boolean;
}

/** @returns null when every turn is done. */
export function benchMoment(work: Work, turnIndex: number, all: Words): BenchMoment | null {
  const words = all.bench;
  const turn = work.turns[turnIndex];
  if (turn === undefined) return null;
  const block = work.plan.blocks[turn.block]!;
  const stepIndex = work.steps.findIndex(
    (step) => turnIndex >= step.firstTurn && turnIndex < step.firstTurn + step.turns,
  );
  const step = work.steps[stepIndex]!;
  const parts = step.round.length;
  const at = turnIndex - step.firstTurn;
  const inBlock = work.turns.filter((other) => other.block === turn.block);
  const over = (turn.to + turn.pass) % 2 === work.plan.parity;
  const back = turn.passes === 2 ? block.rows[turn.row + 1]!.to : turn.to;
  return {
    block: turn.block,
    stepIndex,
    turnInStep: Math.floor(at / parts) + 1,
    turnsInStep: step.turns / parts,
    round: parts === 1 ? null : { parts: step.round, now: at % parts },
    turnInBlock: inBlock.indexOf(turn) + 1,
    turnsInBlock: inBlock.length,
    single: turn.passes === 1,
    ends: turn.right - turn.left + 1,
    from: turn.left + 1,
    to: turn.right + 1,
    span: words.span(turn.left + 1, turn.right + 1),
    next: nextWords(work, stepIndex, all),
    going:
      turn.passes === 2
        ? words.going(over, turn.to + 1, back + 1)
        : words.goingSingle((turn.from + turn.pass) % 2 === work.plan.parity, turn.from + 1, turn.to + 1),
    join: work.plan.joins.some(
      (join) => join.block === turn.block && join.pass >= turn.pass && join.pass < turn.pass + turn.passes,
    ),
  };
}

function nextWords(work: Work, stepIndex: number, all: Words): string {
  const words = all.bench;
  const step = work.steps[stepIndex]!;
  const moves = step.moves;
  const following = work.steps[stepIndex + 1];
  if (step.round.length > 1 && following !== undefined && following.round.length > 1) {
    return words.nextRound(roundChanges(work, step, following, all));
  }
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
  return following === undefined
    ? words.lastOne
    : words.afterwards(all.order.block(work.plan.blocks[following.block]!.name));
}

/** Which wefts go over other ends in the step that follows: each named once, with all it goes over in alternation. */
function roundChanges(work: Work, step: BenchStep, following: BenchStep, all: Words): string {
  const spans = (round: BenchStep['round'], block: number) => [
    ...new Map(
      round.filter((part) => part.block === block).map((part) => [`${part.left} ${part.right}`, part]),
    ).values(),
  ];
  const key = (parts: BenchStep['round']) => parts.map(({ left, right }) => `${left} ${right}`).join();
  const changes = [...new Set(following.round.map((part) => part.block))].flatMap((block) => {
    const now = spans(following.round, block);
    if (key(spans(step.round, block)) === key(now)) return [];
    const name = all.order.block(work.plan.blocks[block]!.name);
    const [first] = now;
    return now.length === 1 && first !== undefined
      ? [all.bench.goesOver(name, first.left + 1, first.right + 1)]
      : [
          all.bench.alternates(
            name,
            now.map(({ left, right }) => [left + 1, right + 1] as const),
          ),
        ];
  });
  return changes.join(', ');
}
