import { useEffect } from 'react';
import { create } from 'zustand';
import type { Piece } from '../../../core/model/piece.ts';
import type { Chart, EdgeError } from '../../../core/model/plan.ts';
import type { EdgeStretch, StandingRun } from '../../canvas/steppedEdge.ts';
import { openLine, type WorkerLine } from './workerLine.ts';

/** The cloth as the drawing makes it just now: a moment behind the hand, never in its way. */
export interface Charted {
  readonly piece: Piece;
  readonly chart: Chart;
  /** The chosen shape the edge and runs belong to. */
  readonly shape: string | null;
  readonly edge: readonly EdgeStretch[];
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
      const { chart, edge, runs } = answer;
      useChartedStore.setState({ charted: { piece: of, chart, shape: ofShape, edge, runs } });
    }
    if (answer.kind === 'errors') useChartedStore.setState({ errors: { piece: of, edges: answer.edges } });
  });
  line.ask(piece, shape);
}

/** Keeps the chart up with the piece while the cartoon is on screen. */
export function useCharting(piece: Piece, shape: string | null): void {
  useEffect(() => ask(piece, shape), [piece, shape]);
}
