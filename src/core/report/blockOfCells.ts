import type { Block, Chart } from '../model/plan.ts';

/** For every cell the place in the order of work of the block that weaves it, or −1. */
export function blockOfCells(chart: Pick<Chart, 'ends' | 'passes'>, blocks: readonly Block[]): Int32Array {
  const cells = new Int32Array(chart.ends * chart.passes).fill(-1);
  for (const block of blocks) {
    for (const { pass, from, to } of block.rows) {
      const base = pass * chart.ends;
      cells.fill(block.order, base + Math.min(from, to), base + Math.max(from, to) + 1);
    }
  }
  return cells;
}
