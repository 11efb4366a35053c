import type { Block, SequenceStep } from '../model/plan.ts';

/** Every row of the work in the order a hand weaves it: block by block, and those that rise together in turn. */
export function rowsInOrder(blocks: readonly Block[], sequence: readonly SequenceStep[]): SequenceStep[] {
  const told = new Set<number>();
  const rows: SequenceStep[] = [];
  for (const [block, { rows: own, together }] of blocks.entries()) {
    if (told.has(block)) continue;
    const group = new Set([block, ...together]);
    for (const member of group) told.add(member);
    if (together.length > 0) rows.push(...sequence.filter((step) => group.has(step.block)));
    else for (let row = 0; row < own.length; row++) rows.push({ block, row });
  }
  return rows;
}
