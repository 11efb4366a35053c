import type { Block, SequenceStep } from '../model/plan.ts';
import { rowsInOrder } from '../order/rowsInOrder.ts';

/**
 * A short name for the part of an order of work that is woven: two plans whose first so many passes are the same have the
 * same one, so a count of passes can tell whether it still belongs. What comes later may change without asking. FNV-1a
 * over the rows, 32 bits; told apart, not kept safe.
 */
export function wovenFingerprint(
  blocks: readonly Block[],
  sequence: readonly SequenceStep[],
  passesDone: number,
): string {
  let hash = 0x811c9dc5;
  const mix = (value: number) => {
    hash = Math.imul(hash ^ (value & 0xffff), 0x01000193) >>> 0;
  };
  for (const { block, row } of rowsInOrder(blocks, sequence).slice(0, passesDone)) {
    const { pass, from, to } = blocks[block]!.rows[row]!;
    mix(blocks[block]!.yarn + 1);
    mix(pass);
    mix(from);
    mix(to);
  }
  return hash.toString(16).padStart(8, '0');
}
