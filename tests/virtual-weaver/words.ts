import type { WeaverBlock, WeaverStep } from './planDocument.ts';
import { refuse } from './refusal.ts';

/**
 * Reads the printed sentences as a person at the loom would. Ends count from 1 in words. What is understood:
 * - `Start … to end 21` in the sentence that begins with "Start": where the first pass stops;
 * - `Left edge: 2 turns, then in 1 end; 3 turns, then in 1 end × 15; half a turn.` and the same for the right edge,
 *   or `Both edges:` when the two say the same. `× n` repeats the turns and the move together.
 */
export function firstStopInWords(words: readonly string[]): number | null {
  for (const sentence of words) {
    const said = /^start\b.*?\bto end (\d+)/i.exec(sentence);
    if (said?.[1] !== undefined) return Number(said[1]) - 1;
  }
  return null;
}

export interface EdgesInWords {
  readonly left: readonly WeaverStep[] | null;
  readonly right: readonly WeaverStep[] | null;
}

/** The steps the sentences name for each edge; null for an edge no sentence speaks of. */
export function edgesInWords(words: readonly string[]): EdgesInWords {
  let left: readonly WeaverStep[] | null = null;
  let right: readonly WeaverStep[] | null = null;
  for (const sentence of words) {
    const said = /^(left|right|both)(?: edges?)?: (.*)$/i.exec(sentence);
    if (said === null) continue;
    const steps = stepsInWords(said[2] ?? '');
    const side = said[1]?.toLowerCase();
    if (side !== 'right') left = steps;
    if (side !== 'left') right = steps;
  }
  return { left, right };
}

function stepsInWords(saying: string): WeaverStep[] {
  return saying
    .replace(/\.$/, '')
    .split(';')
    .flatMap((clause) => {
      const times = Number(/× ?(\d+)/.exec(clause)?.[1] ?? 1);
      const move = /\b(in|out) (\d+)\b/.exec(clause);
      const ends = move === null ? 0 : Number(move[2]) * (move[1] === 'in' ? -1 : 1);
      return Array.from({ length: times }, () => ({ turns: turnsInWords(clause), ends }));
    });
}

function turnsInWords(clause: string): number {
  if (/half a turn/.test(clause)) return 0.5;
  const said = /(\d+(?:\.\d+)?)? ?(½|and a half)? turns?\b/.exec(clause);
  return Number(said?.[1] ?? 0) + (said?.[2] === undefined ? 0 : 0.5);
}

/** Two lists of steps say the same when the edge stands at the same place on every pass. */
function samePath(said: readonly WeaverStep[], listed: readonly WeaverStep[]): boolean {
  const path = (steps: readonly WeaverStep[]): string => {
    const places: number[] = [];
    let place = 0;
    for (const step of steps) {
      for (let half = 0; half < step.turns * 2; half += 1) places.push(place);
      place += step.ends;
    }
    return places.join();
  };
  return path(said) === path(listed);
}

/** Refuses a block whose sentences name other turns than its lists. */
export function checkWords(block: WeaverBlock): void {
  const said = edgesInWords(block.words);
  for (const side of ['left', 'right'] as const) {
    const steps = said[side];
    if (steps !== null && !samePath(steps, block[side])) {
      refuse('words-differ', `The words for the ${side} edge name other turns than its list.`, { block: block.order });
    }
  }
}
