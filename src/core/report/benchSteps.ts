import type { Block } from '../model/plan.ts';
import { type WorkStep, type WorkTurn, workSteps } from './workTurns.ts';

/** One weft's part of a step: a turn, or a single pass, over so many ends. */
export type StepPart = Pick<WorkTurn, 'block' | 'passes' | 'left' | 'right'>;

/** A step as it is woven at the bench. Where wefts rise together it is one step of all of them. */
export interface BenchStep extends WorkStep {
  /**
   * What is woven over and over, in this order, until the step is done: one turn where a block is woven on its own; where
   * wefts rise together, each weft's part of the way up, by the plan's sequence. `turns` counts every part.
   */
  readonly round: readonly StepPart[];
}

/** Gathers the turns of a whole order of work into the steps a weaver follows. */
export function benchSteps(turns: readonly WorkTurn[], blocks: readonly Block[]): readonly BenchStep[] {
  const steps: BenchStep[] = [];
  for (let at = 0; at < turns.length; ) {
    const first = turns[at]!;
    const group = new Set([first.block, ...blocks[first.block]!.together]);
    let end = at + 1;
    while (end < turns.length && (group.size === 1 ? alone(blocks, turns[end]!) : group.has(turns[end]!.block))) end++;
    const stretch = turns.slice(at, end);
    const gathered = group.size === 1 ? soloSteps(stretch) : roundSteps(stretch);
    for (const step of gathered) steps.push({ ...step, firstTurn: step.firstTurn + at });
    at = end;
  }
  return steps;
}

const alone = (blocks: readonly Block[], turn: WorkTurn): boolean => blocks[turn.block]!.together.length === 0;

const partOf = ({ block, passes, left, right }: WorkTurn): StepPart => ({ block, passes, left, right });

const soloSteps = (turns: readonly WorkTurn[]): BenchStep[] =>
  workSteps(turns).map((step) => ({ ...step, round: [partOf(turns[step.firstTurn]!)] }));

/** Two passes up are a round; rounds that are alike, or alike in alternation, follow one another as one step. */
function roundSteps(turns: readonly WorkTurn[]): BenchStep[] {
  const rounds: { readonly firstTurn: number; readonly parts: readonly StepPart[]; readonly key: string }[] = [];
  for (let at = 0; at < turns.length; ) {
    const { pass } = turns[at]!;
    let end = at + 1;
    while (end < turns.length && turns[end]!.pass < pass + 2) end++;
    const parts = turns.slice(at, end).map(partOf);
    rounds.push({ firstTurn: at, parts, key: JSON.stringify(parts) });
    at = end;
  }
  const steps: BenchStep[] = [];
  for (let at = 0; at < rounds.length; ) {
    const alike = timesOver(rounds, at, 1);
    const inPairs = timesOver(rounds, at, 2);
    // Wefts that share an end go over it in alternation, so that every second round is alike.
    const period = inPairs > 1 && 2 * inPairs > alike ? 2 : 1;
    const times = period === 2 ? inPairs : alike;
    const { firstTurn } = rounds[at]!;
    const round = rounds.slice(at, at + period).flatMap(({ parts }) => parts);
    const left = Math.min(...round.map((part) => part.left));
    const right = Math.max(...round.map((part) => part.right));
    const block = turns[firstTurn]!.block;
    steps.push({ block, firstTurn, turns: round.length * times, left, right, moves: null, round });
    at += period * times;
  }
  return steps;
}

/** How many times over so many rounds come from a place on, one after another. */
function timesOver(rounds: readonly { readonly key: string }[], from: number, period: number): number {
  let at = from + period;
  while (at < rounds.length && rounds[at]!.key === rounds[at - period]!.key) at++;
  return Math.floor((at - from) / period);
}
