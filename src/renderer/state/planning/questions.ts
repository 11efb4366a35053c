import type { Piece, Shape } from '../../../core/model/piece.ts';
import type { Chart, EdgeError } from '../../../core/model/plan.ts';
import type { Plan } from '../../../core/plan/planPiece.ts';
import type { StandingRun } from '../../canvas/steppedEdge.ts';

/** A piece on its way to a worker: a shape the worker has already is named by its place in the list sent before. */
export interface SentPiece {
  readonly rest: Omit<Piece, 'shapes'>;
  readonly shapes: readonly (number | Shape)[];
}

/** What the picture of a chart is measured in. */
export type ChartGrid = Pick<Chart, 'ends' | 'passes' | 'pitch' | 'passHeight'>;

export interface Question {
  readonly number: number;
  readonly kind: 'chart' | 'plan';
  readonly piece: SentPiece;
  /** The shape whose steps are wanted, when there is one. */
  readonly shape: string | null;
}

/**
 * The cloth's cells as a picture, one pixel a cell, and round the chosen shape its stepped edge and how long each side
 * stands. Handed over, not copied, so that the page spends nothing on it.
 */
export interface ChartAnswer {
  readonly kind: 'chart';
  readonly number: number;
  readonly grid: ChartGrid;
  readonly picture: ImageBitmap;
  /** Four numbers a stretch: end and pass where it begins, and where it stops. */
  readonly edge: Int32Array;
  readonly runs: readonly StandingRun[];
}

/** How far every edge strays; comes after its chart when there is time before the next question. */
export interface ErrorsAnswer {
  readonly kind: 'errors';
  readonly number: number;
  readonly edges: readonly EdgeError[];
}

export interface PlanAnswer {
  readonly kind: 'plan';
  readonly number: number;
  readonly plan: Plan;
  /** Places of the blocks that differ from what they were before the rest was last planned anew. */
  readonly anew: readonly number[];
}

export interface TroubleAnswer {
  readonly kind: 'trouble';
  readonly number: number;
  readonly message: string;
}

export type PlanningAnswer = ChartAnswer | ErrorsAnswer | PlanAnswer | TroubleAnswer;
