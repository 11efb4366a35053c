import { listInWords } from '../model/listWords.ts';
import type { Block, BlockRow } from '../model/plan.ts';
import type { EdgeStep } from '../schedule/edgeSteps.ts';
import { scheduleWords } from '../schedule/scheduleWords.ts';

const sameSteps = (one: readonly EdgeStep[], other: readonly EdgeStep[]): boolean =>
  one.length === other.length &&
  one.every((step, at) => step.turns === other[at]!.turns && step.ends === other[at]!.ends);

/** Which weft a block is woven with. */
export interface WeftInHand {
  /** Place of the block whose weft goes on. */
  readonly continues: number | null;
  /** Whether it hangs on the loom from work done before this plan. */
  readonly waits: boolean;
  /** Places of the blocks that rise with this one. */
  readonly together: readonly number[];
}

/** What to do in a block, in a weaver's sentences. Ends and blocks count from 1, as on screen. */
export function blockWords(
  rows: readonly BlockRow[],
  start: Block['start'],
  left: readonly EdgeStep[],
  right: readonly EdgeStep[],
  weft: WeftInHand,
): readonly string[] {
  const { continues, together } = weft;
  const begins =
    continues !== null
      ? `Go on with the weft of block ${continues + 1}, from the ${start.side}`
      : weft.waits
        ? `Go on with the weft that waits there, from the ${start.side}`
        : `Start at the ${start.side}`;
  const words = [
    `${begins}, ${start.over ? 'over' : 'under'} end ${start.end + 1}, and weave ${start.end === start.to ? 'that end alone' : `to end ${start.to + 1}`}.`,
  ];
  if (sameSteps(left, right)) words.push(`Both edges: ${scheduleWords(left)}.`);
  else words.push(`Left edge: ${scheduleWords(left)}.`, `Right edge: ${scheduleWords(right)}.`);
  if (together.length > 0) {
    const blocks = listInWords(together.map((block) => block + 1));
    words.push(
      together.length === 1
        ? `Rises together with block ${blocks}: weave them in turn, neither more than a turn ahead.`
        : `Rises together with blocks ${blocks}: weave them in turn, none more than a turn ahead.`,
    );
  }
  const last = rows.at(-1)!;
  words.push(`Finish at end ${last.to + 1}, after ${rows.length} ${rows.length === 1 ? 'pass' : 'passes'}.`);
  return words;
}
