import type { TurnStep } from '../model/plan.ts';

const turnsWord = (turns: number): string =>
  turns === 0.5 ? 'half a turn' : `${turns} ${turns === 1 ? 'turn' : 'turns'}`;

const moveWord = (ends: number): string =>
  `${ends > 0 ? 'out' : 'in'} ${Math.abs(ends)} ${Math.abs(ends) === 1 ? 'end' : 'ends'}`;

/**
 * A schedule as a weaver says it: "2 turns, then in 1 end; 3 turns, then in 1 end × 15; 4 turns". Equal steps that
 * follow each other are said once, with how many times.
 */
export function scheduleWords(steps: readonly TurnStep[]): string {
  const said: string[] = [];
  for (let at = 0; at < steps.length; ) {
    const step = steps[at]!;
    let times = 1;
    while (steps[at + times]?.turns === step.turns && steps[at + times]?.ends === step.ends) times++;
    const once = step.ends === 0 ? turnsWord(step.turns) : `${turnsWord(step.turns)}, then ${moveWord(step.ends)}`;
    said.push(times === 1 ? once : `${once} × ${times}`);
    at += times;
  }
  return said.join('; ');
}
