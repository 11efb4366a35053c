import { Cloth } from './cloth.ts';
import { Hand, type WovenPass } from './hand.ts';
import { type Mismatch, mismatches } from './mismatch.ts';
import { type WeaverPlan, weaverPlanSchema } from './planDocument.ts';
import { HandStops, type Refusal, refuse } from './refusal.ts';
import { blockFromWords, checkWords } from './words.ts';

export interface WeavingReport {
  /** The first thing the hand could not do; null when every block was woven. */
  readonly refusal: Refusal | null;
  /** Where the finished cloth or the rows woven differ from the plan; empty when they agree. */
  readonly mismatches: readonly Mismatch[];
  readonly blocks: number;
  readonly passesWoven: number;
  readonly cellsWoven: number;
}

/**
 * Weaves a printed plan on an empty warp as a hand would, then holds the cloth against the chart cell for cell and
 * the rows against the passes woven.
 * @param document a parsed `plan --json` document.
 * @param from whether each block is woven from `start`, `left` and `right`, or from its sentences alone.
 */
export function weavePlan(document: unknown, from: 'lists' | 'words' = 'lists'): WeavingReport {
  const woven = new Map<number, readonly WovenPass[]>();
  let plan: WeaverPlan | null = null;
  let cloth: Cloth | null = null;
  let refusal: Refusal | null = null;
  try {
    plan = readPlan(document);
    cloth = new Cloth(plan.chart.ends, plan.chart.passes);
    weaveBlocks(plan, cloth, woven, from);
  } catch (stop) {
    if (!(stop instanceof HandStops)) throw stop;
    refusal = stop.refusal;
  }
  const passes = [...woven.values()];
  return {
    refusal,
    mismatches: plan !== null && cloth !== null && refusal === null ? mismatches(plan, cloth, woven) : [],
    blocks: woven.size,
    passesWoven: passes.reduce((sum, rows) => sum + rows.length, 0),
    cellsWoven: passes.flat().reduce((sum, row) => sum + Math.abs(row.to - row.from) + 1, 0),
  };
}

function readPlan(document: unknown): WeaverPlan {
  const parsed = weaverPlanSchema.safeParse(document);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    return refuse('plan-unreadable', `${issue?.path.join('.') ?? ''}: ${issue?.message ?? 'not understood'}`);
  }
  parsed.data.blocks.forEach((block, index, blocks) => {
    if (block.order - blocks[0]!.order !== index) {
      refuse('order-broken', `Block ${block.order} stands at place ${index}.`, { block: block.order });
    }
  });
  return parsed.data;
}

/** One block after another; blocks named in `sequence` alternate as it says, from the first of them on. */
function weaveBlocks(
  plan: WeaverPlan,
  cloth: Cloth,
  woven: Map<number, readonly WovenPass[]>,
  from: 'lists' | 'words',
): void {
  const sequence = plan.sequence ?? [];
  const rising = new Set(sequence.map((step) => step.block));
  const hands = new Map<number, Hand>();
  const handOf = (order: number): Hand => {
    const known = hands.get(order);
    if (known !== undefined) return known;
    const block = plan.blocks[order - (plan.blocks[0]?.order ?? 0)];
    if (block === undefined) return refuse('sequence-broken', `There is no block ${order}.`);
    checkWords(block);
    const told = from === 'words' ? blockFromWords(block) : block;
    const continued = block.continues == null ? null : hands.get(block.continues);
    if (continued === undefined) {
      return refuse('weft-not-there', `Block ${block.continues} is not begun, so its weft can't go on.`, {
        block: order,
      });
    }
    const hand = new Hand(told, cloth, plan.parity, continued);
    hands.set(order, hand);
    woven.set(order, hand.woven);
    return hand;
  };
  let next = 0;
  for (const { order } of plan.blocks) {
    if (!rising.has(order)) {
      const hand = handOf(order);
      while (!hand.finished) hand.weavePass();
      continue;
    }
    // Wefts that rise together are all carried until each of them is finished.
    const carried = new Set<number>([order]);
    for (const begun of hands.keys()) if (rising.has(begun)) carried.add(begun);
    while ([...carried].some((begun) => !handOf(begun).finished)) {
      const step = sequence[next];
      if (step === undefined) {
        refuse('sequence-broken', `The sequence ends before block ${order} is finished.`, { block: order });
      }
      const hand = handOf(step.block);
      if (hand.finished || hand.woven.length !== step.row) {
        refuse(
          'sequence-broken',
          `The sequence asks for row ${step.row} of block ${step.block}, where ${hand.woven.length} rows are woven.`,
          { block: step.block },
        );
      }
      hand.weavePass();
      carried.add(step.block);
      next += 1;
    }
  }
  if (next < sequence.length) refuse('sequence-broken', 'The sequence goes on after every block is finished.');
}
