import { useEffect } from 'react';
import { create } from 'zustand';
import type { Piece } from '../../../core/model/piece.ts';
import type { EdgeError } from '../../../core/model/plan.ts';
import type { StandingRun } from '../../canvas/steppedEdge.ts';
import type { ChartGrid } from './questions.ts';
import { openLine, type WorkerLine } from './workerLine.ts';

/** The cloth as the drawing makes it just now: a moment behind the hand, never in its way. */
export interface Charted {
  readonly piece: Piece;
  readonly grid: ChartGrid;
  readonly picture: ImageBitmap;
  /** The chosen shape the edge and runs belong to. */
  readonly shape: string | null;
  /** Four numbers a stretch, as the worker hands them over. */
  readonly edge: Int32Array;
  readonly runs: readonly StandingRun[];
}

interface ChartedState {
  readonly charted: Charted | null;
  readonly errors: { readonly piece: Piece; readonly edges: readonly EdgeError[] } | null;
}

export const useChartedStore = create<ChartedState>(() => ({ charted: null, errors: null }));

let line: WorkerLine | null = null;

function ask(piece: Piece, shape: string | null): void {
  line ??= openLine('chart', (answer, of, ofShape) => {
    if (answer.kind === 'chart') {
      const { grid, picture, edge, runs } = answer;
      useChartedStore.getState().charted?.picture.close();
      useChartedStore.setState({ charted: { piece: of, grid, picture, shape: ofShape, edge, runs } });
    }
    if (answer.kind === 'errors') useChartedStore.setState({ errors: { piece: of, edges: answer.edges } });
  });
  line.ask(piece, shape);
}

/** Keeps the chart up with the piece while the cartoon is on screen. */
export function useCharting(piece: Piece, shape: string | null): void {
  useEffect(() => ask(piece, shape), [piece, shape]);
}
