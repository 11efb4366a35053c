import type { TurnStep } from '../model/plan.ts';

const turnsWord = (turns: number): string =>
  turns === 0.5 ? 'half a turn' : `${turns} ${turns === 1 ? 'turn' : 'turns'}`;

const moveWord = (ends: number): string =>
  `${ends > 0 ? 'out' : 'in'} ${Math.abs(ends)} ${Math.abs(ends) === 1 ? 'end' : 'ends'}`;

const same = (one: TurnStep | undefined, other: TurnStep | undefined): boolean =>
  one !== undefined && other !== undefined && one.turns === other.turns && one.ends === other.ends;

/** How many times over the first so many of the steps from a place on come, one after another. */
function timesOver(steps: readonly TurnStep[], from: number, period: number): number {
  let at = from + period;
  while (same(steps[at], steps[at - period])) at++;
  return Math.max(1, Math.floor((at - from) / period));
}

const stepWords = (step: TurnStep): string =>
  step.ends === 0 ? turnsWord(step.turns) : `${turnsWord(step.turns)}, then ${moveWord(step.ends)}`;

/**
 * A schedule as a weaver says it: "2 turns, then in 1 end; 3 turns, then in 1 end × 15; 4 turns". Equal steps that
 * follow each other are said once, with how many times; so are pairs of steps, where an end is shared in alternation:
 * "(1 turn, then in 1 end; 1 turn, then out 1 end) × 14".
 */
export function scheduleWords(steps: readonly TurnStep[]): string {
  const said: string[] = [];
  for (let at = 0; at < steps.length; ) {
    const alike = timesOver(steps, at, 1);
    const inPairs = timesOver(steps, at, 2);
    const step = stepWords(steps[at]!);
    if (alike === 1 && inPairs > 1) {
      said.push(`(${step}; ${stepWords(steps[at + 1]!)}) × ${inPairs}`);
      at += 2 * inPairs;
    } else {
      said.push(alike === 1 ? step : `${step} × ${alike}`);
      at += alike;
    }
  }
  return said.join('; ');
}
