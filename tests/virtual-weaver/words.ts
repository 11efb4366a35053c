import type { WeaverBlock, WeaverStep } from './planDocument.ts';
import { refuse } from './refusal.ts';

/**
 * Reads the printed sentences as a person at the loom would. Ends and blocks count from 1 in words. Understood are
 * - `Start at the left, over end 1, and weave to end 7.` or `… weave that end alone.`, also `Go on with the weft of
 *   block 3, from the left, …`;
 * - `Left edge: 2 turns, then in 1 end; 3 turns, then in 1 end × 15; half a turn.`, the same for the right edge, or
 *   `Both edges:` when the two say the same; `× n` repeats the turns and the move together, and `(… ; …) × n` several;
 * - `Finish at end 7, after 12 passes.`
 */
export interface SaidInWords {
  readonly start: {
    readonly side: 'left' | 'right';
    readonly end: number;
    readonly to: number;
    readonly over: boolean;
  } | null;
  readonly left: readonly WeaverStep[] | null;
  readonly right: readonly WeaverStep[] | null;
  readonly finish: { readonly end: number; readonly passes: number } | null;
}

export function readWords(words: readonly string[]): SaidInWords {
  let said: SaidInWords = { start: null, left: null, right: null, finish: null };
  for (const sentence of words) {
    const start = startInWords(sentence);
    if (start !== null) said = { ...said, start };
    const edge = /^(left|right|both)(?: edges?)?: (.*)$/i.exec(sentence);
    if (edge !== null) {
      const steps = stepsInWords(edge[2] ?? '');
      const side = edge[1]?.toLowerCase();
      said = { ...said, ...(side === 'right' ? {} : { left: steps }), ...(side === 'left' ? {} : { right: steps }) };
    }
    const finish = /^finish at end (\d+), after (\d+) pass/i.exec(sentence);
    if (finish !== null) said = { ...said, finish: { end: Number(finish[1]) - 1, passes: Number(finish[2]) } };
  }
  return said;
}

function startInWords(sentence: string): SaidInWords['start'] {
  const said =
    /^(?:start|go on)\b.*\b(left|right)\b.*\b(over|under) end (\d+)\b.*\bweave (?:to end (\d+)|that end alone)/i.exec(
      sentence,
    );
  if (said === null) return null;
  const end = Number(said[3]) - 1;
  return {
    side: said[1]?.toLowerCase() === 'left' ? 'left' : 'right',
    over: said[2]?.toLowerCase() === 'over',
    end,
    to: said[4] === undefined ? end : Number(said[4]) - 1,
  };
}

function stepsInWords(saying: string): WeaverStep[] {
  const steps: WeaverStep[] = [];
  // A clause alone, or several in brackets; either may be said to come so many times.
  for (const [, group, alone, times] of saying.matchAll(/(?:\(([^)]*)\)|([^;(×.]+))(?: × ?(\d+))?(?:;|\.|$)/g)) {
    const clauses = (group ?? alone ?? '').split(';').map(stepInWords);
    for (let time = 0; time < Number(times ?? 1); time += 1) steps.push(...clauses);
  }
  return steps;
}

function stepInWords(clause: string): WeaverStep {
  const move = /\b(in|out) (\d+)\b/.exec(clause);
  return { turns: turnsInWords(clause), ends: move === null ? 0 : Number(move[2]) * (move[1] === 'in' ? -1 : 1) };
}

function turnsInWords(clause: string): number {
  if (/half a turn/.test(clause)) return 0.5;
  const said = /(\d+(?:\.\d+)?)? ?(½|and a half)? turns?\b/.exec(clause);
  return Number(said?.[1] ?? 0) + (said?.[2] === undefined ? 0 : 0.5);
}

/** Where an edge stands on each pass, from where it began: two lists of steps say the same when these agree. */
function pathOf(steps: readonly WeaverStep[]): string {
  const places: number[] = [];
  let place = 0;
  for (const step of steps) {
    for (let half = 0; half < step.turns * 2; half += 1) places.push(place);
    place += step.ends;
  }
  return places.join();
}

/** Refuses a block whose sentences say anything else than its start and its lists. Silence is let pass here. */
export function checkWords(block: WeaverBlock): void {
  const said = readWords(block.words);
  const differ = (what: string) => refuse('words-differ', `The words say another ${what}.`, { block: block.order });
  for (const side of ['left', 'right'] as const) {
    const steps = said[side];
    if (steps !== null && pathOf(steps) !== pathOf(block[side])) differ(`${side} edge`);
  }
  const { start, finish } = said;
  if (start !== null) {
    const { to = start.to } = block.start;
    if (start.side !== block.start.side || start.end !== block.start.end) differ('place to start');
    if (start.over !== block.start.over) differ('shed');
    if (start.to !== to) differ('first stop');
  }
  const passes = block.left.reduce((sum, step) => sum + step.turns * 2, 0);
  if (finish !== null && finish.passes !== passes) differ('number of passes');
}

/** The block as its words alone tell it; refuses when they leave anything out. */
export function blockFromWords(block: WeaverBlock): WeaverBlock {
  const { start, left, right } = readWords(block.words);
  if (start === null || left === null || right === null) {
    return refuse('words-differ', 'The words leave out the start or an edge.', { block: block.order });
  }
  return { ...block, start, left: [...left], right: [...right] };
}
