import type { TurnStep } from '../model/plan.ts';
import { repeatedRuns } from './repeatedRuns.ts';

const turnsWord = (turns: number): string =>
  turns === 0.5 ? 'half a turn' : `${turns} ${turns === 1 ? 'turn' : 'turns'}`;

const moveWord = (ends: number): string =>
  `${ends > 0 ? 'out' : 'in'} ${Math.abs(ends)} ${Math.abs(ends) === 1 ? 'end' : 'ends'}`;

const stepWords = (step: TurnStep): string =>
  step.ends === 0 ? turnsWord(step.turns) : `${turnsWord(step.turns)}, then ${moveWord(step.ends)}`;

/**
 * A schedule as a weaver says it: "2 turns, then in 1 end; 3 turns, then in 1 end × 15; 4 turns". Equal steps that
 * follow each other are said once, with how many times; so are groups of steps, as where an end is shared in
 * alternation: "(1 turn, then in 1 end; 1 turn, then out 1 end) × 14".
 */
export function scheduleWords(steps: readonly TurnStep[]): string {
  const said = steps.map(stepWords);
  return repeatedRuns(said)
    .map(({ from, period, times }) => {
      const group = said.slice(from, from + period).join('; ');
      return times === 1 ? group : `${period === 1 ? group : `(${group})`} × ${times}`;
    })
    .join('; ');
}
