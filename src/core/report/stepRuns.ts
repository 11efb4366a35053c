import { repeatedRuns } from '../schedule/repeatedRuns.ts';
import { type WorkStep, type WorkTurn, workSteps } from './workTurns.ts';

/** A step of one block as it is told by itself: how many turns, a single pass being half a turn. */
export interface ToldStep extends Pick<WorkStep, 'left' | 'right' | 'moves'> {
  readonly turns: number;
}

/** Steps told once, in order, and how many times they come. */
export interface StepRun {
  readonly steps: readonly ToldStep[];
  readonly times: number;
}

/** The steps of one block, those that repeat told once. @param turns of that block alone, in order. */
export function stepRuns(turns: readonly WorkTurn[]): readonly StepRun[] {
  const steps = workSteps(turns).map(({ firstTurn, turns: count, left, right, moves }): ToldStep => {
    const passes = turns.slice(firstTurn, firstTurn + count).reduce((sum, turn) => sum + turn.passes, 0);
    return { turns: passes / 2, left, right, moves };
  });
  return repeatedRuns(steps.map((step) => JSON.stringify(step))).map(({ from, period, times }) => ({
    steps: steps.slice(from, from + period),
    times,
  }));
}
