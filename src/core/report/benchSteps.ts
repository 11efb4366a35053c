import type { Block } from '../model/plan.ts';
import { repeatedRuns } from '../schedule/repeatedRuns.ts';
import { type WorkStep, type WorkTurn, workSteps } from './workTurns.ts';

/** One weft's part of a step: a turn, or a single pass, over so many ends. */
export type StepPart = Pick<WorkTurn, 'block' | 'passes' | 'left' | 'right'>;

/** What is woven before the next round begins: one turn of a block on its own, or each weft's part of two passes up. */
export type Round = readonly StepPart[];

/** A step as it is woven at the bench. Where wefts rise together it is one step of all of them. */
export interface BenchStep extends WorkStep {
  /**
   * What is woven over and over, in this order, until the step is done: one round; several where wefts go over the ends
   * between them by turns, as where they share an end or dovetail. `turns` counts every part of every round.
   */
  readonly rounds: readonly Round[];
}

/** Where a turn of a step stands in it, each counted from 0. */
export interface PlaceInStep {
  /** How many times all the rounds have been woven before. */
  readonly time: number;
  readonly round: number;
  readonly part: number;
}

/** Turns, or single passes, of a step's rounds woven once. */
export const partsOfRounds = (step: BenchStep): number => step.rounds.reduce((sum, round) => sum + round.length, 0);

/** How many times a step's rounds are woven. */
export const timesOver = (step: BenchStep): number => step.turns / partsOfRounds(step);

/** @param turn counted from the step's first, below its number of turns. */
export function placeInStep(step: BenchStep, turn: number): PlaceInStep {
  const parts = partsOfRounds(step);
  let part = turn % parts;
  let round = 0;
  while (part >= step.rounds[round]!.length) part -= step.rounds[round++]!.length;
  return { time: Math.floor(turn / parts), round, part };
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
  workSteps(turns).map((step) => ({ ...step, rounds: [[partOf(turns[step.firstTurn]!)]] }));

/** Two passes up are a round; rounds that repeat, alone or as a group, are one step. */
function roundSteps(turns: readonly WorkTurn[]): BenchStep[] {
  const starts: number[] = [];
  const rounds: Round[] = [];
  for (let at = 0; at < turns.length; ) {
    const { pass } = turns[at]!;
    let end = at + 1;
    while (end < turns.length && turns[end]!.pass < pass + 2) end++;
    starts.push(at);
    rounds.push(turns.slice(at, end).map(partOf));
    at = end;
  }
  return repeatedRuns(rounds.map((round) => JSON.stringify(round))).map(({ from, period, times }) => {
    const repeated = rounds.slice(from, from + period);
    const parts = repeated.flat();
    const firstTurn = starts[from]!;
    return {
      block: turns[firstTurn]!.block,
      firstTurn,
      turns: parts.length * times,
      left: Math.min(...parts.map((part) => part.left)),
      right: Math.max(...parts.map((part) => part.right)),
      moves: null,
      rounds: repeated,
    };
  });
}
