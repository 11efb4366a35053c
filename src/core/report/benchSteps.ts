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

/** Two passes up are a round; rounds that are alike follow one another as one step. */
function roundSteps(turns: readonly WorkTurn[]): BenchStep[] {
  const steps: BenchStep[] = [];
  for (let at = 0; at < turns.length; ) {
    const { pass } = turns[at]!;
    let end = at + 1;
    while (end < turns.length && turns[end]!.pass < pass + 2) end++;
    const round = turns.slice(at, end).map(partOf);
    const last = steps.at(-1);
    if (last && JSON.stringify(last.round) === JSON.stringify(round)) {
      steps[steps.length - 1] = { ...last, turns: last.turns + round.length };
    } else {
      const left = Math.min(...round.map((part) => part.left));
      const right = Math.max(...round.map((part) => part.right));
      steps.push({ block: turns[at]!.block, firstTurn: at, turns: round.length, left, right, moves: null, round });
    }
    at = end;
  }
  return steps;
}
