import { type BenchStep, placeInStep, type Round, timesOver } from '../../../core/report/benchSteps.ts';
import type { Work } from '../../state/useWork.ts';
import type { Words } from '../../words/en.ts';

/** What the bench says at one turn. */
export interface BenchMoment {
  readonly block: number;
  readonly stepIndex: number;
  /** Turns; where several wefts rise together rounds, or repeats of several rounds. */
  readonly turnInStep: number;
  readonly turnsInStep: number;
  /** Wefts that rise together: the rounds of the step, and which part of which comes now; null where a block is woven alone. */
  readonly together: { readonly rounds: readonly Round[]; readonly round: number; readonly part: number } | null;
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
  const { time, round, part } = placeInStep(step, turnIndex - step.firstTurn);
  const inBlock = work.turns.filter((other) => other.block === turn.block);
  const over = (turn.to + turn.pass) % 2 === work.plan.parity;
  const back = turn.passes === 2 ? block.rows[turn.row + 1]!.to : turn.to;
  return {
    block: turn.block,
    stepIndex,
    turnInStep: time + 1,
    turnsInStep: timesOver(step),
    together: isTogether(step) ? { rounds: step.rounds, round, part } : null,
    turnInBlock: inBlock.indexOf(turn) + 1,
    turnsInBlock: inBlock.length,
    single: turn.passes === 1,
    ends: turn.right - turn.left + 1,
    from: turn.left + 1,
    to: turn.right + 1,
    span: words.span(turn.left + 1, turn.right + 1),
    next: nextWords(work, stepIndex, turnIndex - step.firstTurn, all),
    going:
      turn.passes === 2
        ? words.going(over, turn.to + 1, back + 1)
        : words.goingSingle((turn.from + turn.pass) % 2 === work.plan.parity, turn.from + 1, turn.to + 1),
    join: work.plan.joins.some(
      (join) => join.block === turn.block && join.pass >= turn.pass && join.pass < turn.pass + turn.passes,
    ),
  };
}

/** Whether wefts rise together in a step: its rounds are of several parts. */
const isTogether = (step: BenchStep): boolean => step.rounds.some((round) => round.length > 1);

/** @param turn of the step, counted from 0. */
function nextWords(work: Work, stepIndex: number, turn: number, all: Words): string {
  const words = all.bench;
  const step = work.steps[stepIndex]!;
  const moves = step.moves;
  const following = work.steps[stepIndex + 1];
  if (isTogether(step)) {
    const { time, round } = placeInStep(step, turn);
    const ends = time + 1 === timesOver(step) && round + 1 === step.rounds.length;
    // Which ends those are stands in the list of the repeat.
    if (step.rounds.length > 1 && !ends) return words.nextInRepeat(((round + 1) % step.rounds.length) + 1);
    if (following !== undefined && isTogether(following)) {
      const changes = roundChanges(work, step.rounds.at(-1)!, following.rounds[0]!, all);
      return following.rounds.length > 1
        ? words.nextRepeat(following.rounds.length, timesOver(following), changes)
        : words.nextRound(changes);
    }
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

/** Which wefts go over other ends in the next round: each named once, with all it goes over there. */
function roundChanges(work: Work, now: Round, next: Round, all: Words): string {
  const spans = (round: Round, block: number) => [
    ...new Map(
      round.filter((part) => part.block === block).map((part) => [`${part.left} ${part.right}`, part]),
    ).values(),
  ];
  const key = (parts: Round) => parts.map(({ left, right }) => `${left} ${right}`).join();
  const changes = [...new Set(next.map((part) => part.block))].flatMap((block) => {
    const there = spans(next, block);
    if (key(spans(now, block)) === key(there)) return [];
    const name = all.order.block(work.plan.blocks[block]!.name);
    return [
      all.bench.goesOver(
        name,
        there.map(({ left, right }) => [left + 1, right + 1] as const),
      ),
    ];
  });
  return changes.join(', ');
}
