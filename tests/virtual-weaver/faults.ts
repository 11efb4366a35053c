import type { WeaverBlock, WeaverPlan, WeaverStep } from './planDocument.ts';

/** Mistakes put into a good plan on purpose. Each gives a plan the weaver must refuse or find different. */
type Fault = (plan: WeaverPlan) => WeaverPlan | null;

function withBlock(plan: WeaverPlan, place: number, change: (block: WeaverBlock) => WeaverBlock): WeaverPlan {
  return { ...plan, blocks: plan.blocks.map((block, index) => (index === place ? change(block) : block)) };
}

/** The cells of a block, from its rows: only used to find a pair of blocks where one rests on the other. */
function restsOn(upper: WeaverBlock, lower: WeaverBlock): boolean {
  return upper.rows.some((above) =>
    lower.rows.some(
      (below) =>
        below.pass === above.pass - 1 &&
        Math.min(above.from, above.to) <= Math.max(below.from, below.to) &&
        Math.min(below.from, below.to) <= Math.max(above.from, above.to),
    ),
  );
}

/** Two neighbours in the order change places, the upper one coming first. */
export const swapTwoBlocks: Fault = (plan) => {
  const orderOf = (index: number) => plan.blocks[index]!.order;
  const rising = new Set((plan.sequence ?? []).map((step) => step.block));
  for (let index = 0; index + 1 < plan.blocks.length; index += 1) {
    const [lower, upper] = [plan.blocks[index]!, plan.blocks[index + 1]!];
    if (rising.has(lower.order) || rising.has(upper.order) || !restsOn(upper, lower)) continue;
    const blocks = [...plan.blocks];
    blocks[index] = { ...upper, order: orderOf(index) };
    blocks[index + 1] = { ...lower, order: orderOf(index + 1) };
    return { ...plan, blocks };
  }
  return null;
};

const lessOneTurn = (steps: readonly WeaverStep[]): WeaverStep[] | null => {
  const place = steps.findIndex((step) => step.turns > 1);
  return place < 0
    ? null
    : steps.map((step, index) => (index === place ? { ...step, turns: step.turns - 1 } : { ...step }));
};

/** One turn forgotten at both edges of a block, so that left and right still agree. */
export const oneTurnMissing: Fault = (plan) => {
  for (const [place, block] of plan.blocks.entries()) {
    const left = lessOneTurn(block.left);
    const right = lessOneTurn(block.right);
    if (left !== null && right !== null) return withBlock(plan, place, (good) => ({ ...good, left, right, words: [] }));
  }
  return null;
};

/** One turn forgotten at the left edge only. */
export const oneTurnMissingAtOneEdge: Fault = (plan) => {
  for (const [place, block] of plan.blocks.entries()) {
    const left = lessOneTurn(block.left);
    if (left !== null) return withBlock(plan, place, (good) => ({ ...good, left, words: [] }));
  }
  return null;
};

export const wrongParity: Fault = (plan) => ({ ...plan, parity: plan.parity === 0 ? 1 : 0 });

/** The last block starts over where it should go under, or the other way about. */
export const wrongShed: Fault = (plan) =>
  withBlock(plan, plan.blocks.length - 1, (block) => ({
    ...block,
    start: { ...block.start, over: !block.start.over },
  }));

/** The last block starts one end to the left. */
export const startOneEndOff: Fault = (plan) =>
  withBlock(plan, plan.blocks.length - 1, (block) => ({
    ...block,
    start: { ...block.start, end: block.start.end - 1, over: !block.start.over },
    words: [],
  }));

/** The first pass of the last block stops one end too far right. */
export const firstStopOneEndOff: Fault = (plan) =>
  withBlock(plan, plan.blocks.length - 1, (block) => ({
    ...block,
    start: { ...block.start, to: (block.start.to ?? 0) + 1 },
    words: [],
  }));

/** The first step of some edge moves one end too many. */
export const stepOneEndOff: Fault = (plan) => {
  for (const [place, block] of plan.blocks.entries()) {
    if (block.left.length < 2) continue;
    const left = block.left.map((step, index) => (index === 0 ? { ...step, ends: step.ends - 1 } : step));
    return withBlock(plan, place, (good) => ({ ...good, left, words: [] }));
  }
  return null;
};

/** One cell of the printed chart has another yarn. */
export const chartOneCellOff: Fault = (plan) => {
  const rows = plan.chart.rows.map((runs) => runs.map((run) => [...run] as typeof run));
  const run = rows.at(-1)?.at(-1);
  if (run === undefined) return null;
  run[0] = 'a yarn nobody wove';
  return { ...plan, chart: { ...plan.chart, rows } };
};

/** The listed rows of a block say another end than the hand reached. */
export const rowOneEndOff: Fault = (plan) =>
  withBlock(plan, 0, (block) => ({
    ...block,
    rows: block.rows.map((row, index) => (index === 0 ? { ...row, to: row.to - 1 } : row)),
  }));

/** Rising wefts told to alternate in the wrong order. */
export const sequenceSwapped: Fault = (plan) => {
  const sequence = [...(plan.sequence ?? [])];
  const place = sequence.findIndex((step, index) => index > 0 && sequence[index - 1]!.block === step.block);
  if (sequence.length < 2) return null;
  const at = Math.max(1, place);
  [sequence[at - 1], sequence[at]] = [sequence[at]!, sequence[at - 1]!];
  return place < 0 ? { ...plan, sequence: [...sequence].sort((a, b) => a.block - b.block) } : { ...plan, sequence };
};

export const allFaults = {
  swapTwoBlocks,
  oneTurnMissing,
  oneTurnMissingAtOneEdge,
  wrongParity,
  wrongShed,
  startOneEndOff,
  firstStopOneEndOff,
  stepOneEndOff,
  chartOneCellOff,
  rowOneEndOff,
  sequenceSwapped,
} satisfies Record<string, Fault>;
