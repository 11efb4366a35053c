import type { Cloth } from './cloth.ts';
import { edgePlaces } from './edgePlaces.ts';
import type { WeaverBlock } from './planDocument.ts';
import { refuse } from './refusal.ts';
import { readWords } from './words.ts';

export interface WovenPass {
  readonly pass: number;
  readonly from: number;
  readonly to: number;
}

/**
 * A hand with one weft, weaving one block from `start`, `left`, `right` and the words; it never sees `rows`. It
 * knows where the weft is, and so where the next pass begins; each pass only says where to stop.
 */
export class Hand {
  readonly woven: WovenPass[] = [];
  private readonly block: WeaverBlock;
  private readonly cloth: Cloth;
  private readonly parity: 0 | 1;
  private readonly left: readonly number[];
  private readonly right: readonly number[];
  /** The end the weft hangs from, and how the last pass went round it; null before the first pass. */
  private hangs: { readonly end: number; readonly over: boolean; readonly pass: number } | null = null;

  /** The hand whose weft this block goes on with, where it does. */
  private readonly continued: Hand | null;

  constructor(block: WeaverBlock, cloth: Cloth, parity: 0 | 1, continued: Hand | null = null) {
    this.continued = continued;
    this.block = block;
    this.cloth = cloth;
    this.parity = parity;
    const { end, side } = block.start;
    const farEnd = this.firstStop();
    this.left = edgePlaces(block.left, side === 'left' ? end : farEnd, -1, block.order);
    this.right = edgePlaces(block.right, side === 'left' ? farEnd : end, 1, block.order);
    if (this.left.length !== this.right.length) {
      refuse(
        'turns-differ',
        `The left makes ${this.left.length / 2} turns and the right ${this.right.length / 2}; one weft makes them in step.`,
        { block: block.order },
      );
    }
  }

  get passes(): number {
    return this.left.length;
  }

  get finished(): boolean {
    return this.woven.length === this.passes;
  }

  /** Weaves the next pass: from where the weft hangs, to where the far edge stands now. */
  weavePass(): void {
    const { block, cloth } = this;
    const count = this.woven.length;
    const goesRight = (block.start.side === 'left') === (count % 2 === 0);
    const near = (goesRight ? this.left : this.right)[count]!;
    const to = (goesRight ? this.right : this.left)[count]!;
    const hangs = this.hangs;
    const from = hangs === null ? block.start.end : hangs.end;
    const pass = hangs === null ? this.firstPass() : hangs.pass + 1;
    const at = { block: block.order, pass, end: from };
    if (near !== from) {
      refuse('turn-broken', `The weft hangs at end ${from}, but the edge is told to turn at end ${near}.`, at);
    }
    if (goesRight ? to < from : to > from) {
      refuse('edges-cross', `From end ${from} the weft can't go ${goesRight ? 'right' : 'left'} to end ${to}.`, at);
    }
    const step = goesRight ? 1 : -1;
    // Going round an end changes the shed: what was over comes back under.
    let over = hangs === null ? block.start.over : !hangs.over;
    for (let end = from; ; end += step) {
      cloth.lay(end, pass, block.yarn, over, block.order);
      if (over !== ((end + pass) % 2 === this.parity)) {
        refuse('wrong-shed', `Pass ${pass} goes ${over ? 'over' : 'under'} end ${end}, against the piece's shed.`, {
          ...at,
          end,
        });
      }
      if (end === to) break;
      over = !over;
    }
    this.woven.push({ pass, from, to });
    this.hangs = { end: to, over, pass };
  }

  /** The first bare pass on the end where the weft begins. */
  private firstPass(): number {
    const { end, over } = this.block.start;
    const { continued } = this;
    if (continued !== null) {
      const last = continued.hangs;
      const at = { block: this.block.order, end };
      if (last === null || !continued.finished)
        return refuse('weft-not-there', 'The weft to go on with is not free.', at);
      if (last.end !== end || last.pass + 1 !== this.cloth.fell(end) || last.over === over) {
        refuse('weft-not-there', `The weft to go on with hangs at end ${last.end}, pass ${last.pass}.`, at);
      }
    }
    if (end < 0 || end >= this.cloth.ends) {
      refuse('off-the-warp', `There is no end ${end} to start on.`, { block: this.block.order, end });
    }
    return this.cloth.fell(end);
  }

  private firstStop(): number {
    const { order, start, words } = this.block;
    const to = start.to ?? readWords(words).start?.to;
    return to ?? refuse('first-stop-unknown', 'Nothing says where the first pass stops.', { block: order });
  }
}
