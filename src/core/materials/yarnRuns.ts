import { type Chart, HEADER_AREA } from '../model/plan.ts';

/** How much of one yarn a chart holds. A run is an unbroken stretch of the yarn in one pass. */
export interface YarnRuns {
  /** Cells in the body of the cloth, and in the header and footer. */
  readonly cells: number;
  readonly headerCells: number;
  readonly runs: number;
}

/** Counts cells and runs of each yarn, by its index. Taken from the chart alone, so a turned chart counts the same. */
export function yarnRuns(chart: Chart, yarns: number): readonly YarnRuns[] {
  const counts = Array.from({ length: yarns }, () => ({ cells: 0, headerCells: 0, runs: 0 }));
  const { cells, areas, ends } = chart;
  for (let cell = 0; cell < cells.length; cell += 1) {
    const count = counts[cells[cell]!];
    if (count === undefined) continue;
    if (areas[cell] === HEADER_AREA) count.headerCells += 1;
    else count.cells += 1;
    if (cell % ends === 0 || cells[cell] !== cells[cell - 1]) count.runs += 1;
  }
  return counts;
}
