import type { Block, SequenceStep } from '../model/plan.ts';

/**
 * A short name for an order of work: two plans with the same blocks, rows and sequence have the same one, so a count
 * of turns can tell whether it still belongs. FNV-1a over the rows, 32 bits; told apart, not kept safe.
 */
export function planFingerprint(blocks: readonly Block[], sequence: readonly SequenceStep[]): string {
  let hash = 0x811c9dc5;
  const mix = (value: number) => {
    hash = Math.imul(hash ^ (value & 0xffff), 0x01000193) >>> 0;
  };
  for (const block of blocks) {
    mix(block.yarn + 1);
    for (const row of block.rows) {
      mix(row.pass);
      mix(row.from);
      mix(row.to);
    }
  }
  for (const step of sequence) {
    mix(step.block);
    mix(step.row);
  }
  return hash.toString(16).padStart(8, '0');
}
