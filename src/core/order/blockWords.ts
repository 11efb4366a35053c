import type { Block, BlockRow } from '../model/plan.ts';
import type { EdgeStep } from '../schedule/edgeSteps.ts';
import { scheduleWords } from '../schedule/scheduleWords.ts';

const sameSteps = (one: readonly EdgeStep[], other: readonly EdgeStep[]): boolean =>
  one.length === other.length &&
  one.every((step, at) => step.turns === other[at]!.turns && step.ends === other[at]!.ends);

/** What to do in a block, in a weaver's sentences. Ends and blocks count from 1, as on screen. */
export function blockWords(
  rows: readonly BlockRow[],
  start: Block['start'],
  left: readonly EdgeStep[],
  right: readonly EdgeStep[],
  continues: number | null,
  together: readonly number[],
): readonly string[] {
  const weft = continues === null ? 'Start' : `Go on with the weft of block ${continues + 1}, from the`;
  const begins = continues === null ? `${weft} at the ${start.side}` : `${weft} ${start.side}`;
  const words = [
    `${begins}, ${start.over ? 'over' : 'under'} end ${start.end + 1}, and weave ${start.end === start.to ? 'that end alone' : `to end ${start.to + 1}`}.`,
  ];
  if (sameSteps(left, right)) words.push(`Both edges: ${scheduleWords(left)}.`);
  else words.push(`Left edge: ${scheduleWords(left)}.`, `Right edge: ${scheduleWords(right)}.`);
  if (together.length > 0) {
    const blocks = together.map((block) => block + 1).join(' and ');
    words.push(`Rises together with block ${blocks}: weave them in turn, neither more than a pass ahead.`);
  }
  const last = rows.at(-1)!;
  words.push(`Finish at end ${last.to + 1}, after ${rows.length} ${rows.length === 1 ? 'pass' : 'passes'}.`);
  return words;
}
