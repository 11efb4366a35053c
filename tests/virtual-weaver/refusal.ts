/** Why the hand stopped: each is something no weaver could do, or an instruction that cannot be followed. */
export type RefusalTag =
  /** The document lacks something a weaver needs. */
  | 'plan-unreadable'
  /** Blocks are not numbered in the order they are to be woven. */
  | 'order-broken'
  /** Left and right name a different number of turns, or no whole number of half turns. */
  | 'turns-differ'
  /** An edge is told to move between the two passes of one turn. */
  | 'turn-broken'
  /** A step is named after the last turn. */
  | 'step-after-the-end'
  /** Nothing says where the first pass stops. */
  | 'first-stop-unknown'
  /** A block is told to go on with a weft that hangs somewhere else. */
  | 'weft-not-there'
  /** The edges pass each other. */
  | 'edges-cross'
  /** An end that is not on the loom. */
  | 'off-the-warp'
  /** Higher than the chart. */
  | 'outside-chart'
  | 'woven-twice'
  | 'over-a-gap'
  | 'wrong-shed'
  /** Blocks that rise together are told to alternate in a way that cannot be followed. */
  | 'sequence-broken'
  /** The words say something else than `left` and `right`. */
  | 'words-differ';

export interface Refusal {
  readonly tag: RefusalTag;
  /** Place of the block in the order, or null when the plan as a whole is refused. */
  readonly block: number | null;
  readonly pass: number | null;
  readonly end: number | null;
  readonly saying: string;
}

/** Thrown inside the weaver only; `weavePlan` catches it and gives it back as a value. */
export class HandStops extends Error {
  readonly refusal: Refusal;
  constructor(refusal: Refusal) {
    super(refusal.saying);
    this.refusal = refusal;
  }
}

export function refuse(
  tag: RefusalTag,
  saying: string,
  at: { readonly block?: number; readonly pass?: number; readonly end?: number } = {},
): never {
  throw new HandStops({ tag, block: at.block ?? null, pass: at.pass ?? null, end: at.end ?? null, saying });
}
