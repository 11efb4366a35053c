import type { MeasuredCloth } from '../chart/clothGrid.ts';
import type { SteppedChart } from '../chart/makeChart.ts';
import type { Block, Join, SequenceStep } from '../model/plan.ts';
import { blockWords } from '../order/blockWords.ts';
import { rowsInOrder } from '../order/rowsInOrder.ts';
import type { Wefts } from '../order/wefts.ts';
import { edgeSteps } from '../schedule/edgeSteps.ts';

/** What is woven in which order, from the first pass to the last. */
export interface WeavingWork {
  readonly stepped: SteppedChart;
  readonly wefts: Wefts;
  readonly blocks: readonly Block[];
  readonly sequence: readonly SequenceStep[];
  readonly joins: readonly Join[];
  /** Place in the order of the block that weaves every cell. */
  readonly owner: Int32Array;
  /** What was measured when the rest was last planned anew; null where it never was. */
  readonly measured: MeasuredCloth | null;
}

/** The part of an order of work that stands on the loom. */
export interface WovenWork {
  readonly stepped: SteppedChart;
  /** Passes on each end, and on the highest. */
  readonly fell: Uint16Array;
  readonly highest: number;
  /** Blocks that were begun, as far as they were woven. */
  readonly blocks: readonly Block[];
  readonly sequence: readonly SequenceStep[];
  readonly joins: readonly Join[];
  /** Place among these blocks for every cell woven, -1 elsewhere. */
  readonly owner: Int32Array;
}

/** Cuts an order of work off after so many passes; more than it has are taken for all. */
export function wovenWork(work: WeavingWork, passesDone: number): WovenWork {
  const { ends, passes } = work.stepped.chart;
  const fell = new Uint16Array(ends);
  const owner = new Int32Array(ends * passes).fill(-1);
  const rowsWoven = new Map<number, number>();
  const woven = rowsInOrder(work.blocks, work.sequence).slice(0, passesDone);
  for (const { block } of woven) rowsWoven.set(block, (rowsWoven.get(block) ?? 0) + 1);
  const places = new Map([...rowsWoven.keys()].sort((one, other) => one - other).map((old, place) => [old, place]));
  for (const { block, row } of woven) {
    const { pass, from, to } = work.blocks[block]!.rows[row]!;
    const [low, high] = [Math.min(from, to), Math.max(from, to)];
    fell.fill(pass + 1, low, high + 1);
    owner.fill(places.get(block)!, pass * ends + low, pass * ends + high + 1);
  }
  const place = (old: number | null): number | null => (old === null ? null : (places.get(old) ?? null));
  const placed = (olds: readonly number[]) => olds.map(place).filter((each) => each !== null);
  const blocks = [...places.keys()].map((old): Block => {
    const block = work.blocks[old]!;
    const count = rowsWoven.get(old)!;
    const moved = {
      order: places.get(old)!,
      after: placed(block.after),
      partner: place(block.partner),
      continues: place(block.continues),
      together: placed(block.together),
    };
    if (count === block.rows.length) return { ...block, ...moved };
    const rows = block.rows.slice(0, count);
    const left = edgeSteps(rows, block.start.side === 'left', 'left');
    const right = edgeSteps(rows, block.start.side === 'left', 'right');
    return {
      ...block,
      ...moved,
      rows,
      left: left.map(({ turns, ends: by }) => ({ turns, ends: by })),
      right: right.map(({ turns, ends: by }) => ({ turns, ends: by })),
      heights: { left: block.heights.left.slice(0, left.length), right: block.heights.right.slice(0, right.length) },
      words: blockWords(rows, block.start, left, right, {
        continues: moved.continues,
        waits: false,
        together: moved.together,
      }),
    };
  });
  const inSequence = new Set(work.sequence.map((step) => step.block));
  return {
    stepped: work.stepped,
    fell,
    highest: fell.reduce((most, count) => Math.max(most, count), 0),
    blocks,
    sequence: woven
      .filter((step) => inSequence.has(step.block))
      .map(({ block, row }) => ({ block: places.get(block)!, row })),
    joins: work.joins
      .filter((join) => {
        const block = work.blocks[join.block]!;
        const row = block.rows.findIndex((each) => each.pass === join.pass);
        return places.has(join.block) && row < rowsWoven.get(join.block)!;
      })
      .map((join) => ({ ...join, block: places.get(join.block)! })),
    owner,
  };
}
