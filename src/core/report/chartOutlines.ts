import type { Chart } from '../model/plan.ts';

/** A straight piece of an edge between two cells of a chart: corners in ends across and passes up. */
export interface ChartEdge {
  readonly fromEnd: number;
  readonly fromPass: number;
  readonly toEnd: number;
  readonly toPass: number;
}

/**
 * The stepped edges of a chart: wherever neighbouring cells differ in what `of` says of them, gathered into the longest
 * straight pieces. The rim of the cloth is not among them.
 * @param of for example the yarn, or the area, of the cell at (pass · ends + end).
 */
export function chartOutlines(chart: Pick<Chart, 'ends' | 'passes'>, of: (cell: number) => number): ChartEdge[] {
  const { ends, passes } = chart;
  const edges: ChartEdge[] = [];
  for (let end = 1; end < ends; end++) {
    for (let pass = 0; pass < passes; ) {
      const differs = (at: number) => of(at * ends + end - 1) !== of(at * ends + end);
      if (!differs(pass)) {
        pass++;
        continue;
      }
      const from = pass;
      while (pass < passes && differs(pass)) pass++;
      edges.push({ fromEnd: end, fromPass: from, toEnd: end, toPass: pass });
    }
  }
  for (let pass = 1; pass < passes; pass++) {
    for (let end = 0; end < ends; ) {
      const differs = (at: number) => of((pass - 1) * ends + at) !== of(pass * ends + at);
      if (!differs(end)) {
        end++;
        continue;
      }
      const from = end;
      while (end < ends && differs(end)) end++;
      edges.push({ fromEnd: from, fromPass: pass, toEnd: end, toPass: pass });
    }
  }
  return edges;
}
