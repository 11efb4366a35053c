import type { WeaverStep } from './planDocument.ts';
import { refuse } from './refusal.ts';

/**
 * Where an edge stands on each pass. Every pass touches every edge of its block once, so one turn is two passes and
 * a half turn (the tail, the finish) is one.
 * @param steps make `turns` turns, then move by `ends`, outward positive.
 * @param outward −1 for a left edge, +1 for a right one.
 * @returns one end per pass.
 */
export function edgePlaces(steps: readonly WeaverStep[], first: number, outward: -1 | 1, block: number): number[] {
  const places: number[] = [];
  let place = first;
  steps.forEach((step, index) => {
    const passes = step.turns * 2;
    if (!(passes > 0) || !Number.isInteger(passes)) {
      refuse('turns-differ', `Step ${index} makes ${step.turns} turns, which no hand can count.`, { block });
    }
    for (let pass = 0; pass < passes; pass += 1) places.push(place);
    place += outward * step.ends;
    if (index === steps.length - 1 && step.ends !== 0) {
      refuse('step-after-the-end', `The last step moves ${step.ends} ends, with no turn left to make there.`, {
        block,
      });
    }
  });
  return places;
}
