import type { Arithmetic, Block, Chart, EdgeError, Join, SequenceStep, Slit } from '../model/plan.ts';

/** What printed sheets need of a plan. */
export interface SheetPlan {
  readonly chart: Chart;
  readonly blocks: readonly Block[];
  readonly sequence: readonly SequenceStep[];
  readonly slits: readonly Slit[];
  readonly joins: readonly Join[];
  readonly edges: readonly EdgeError[];
  readonly arithmetic: readonly Arithmetic[];
}
