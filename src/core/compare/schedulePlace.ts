import type { LoomReading } from '../model/check.ts';
import type { Piece } from '../model/piece.ts';
import { median } from '../photo/statistics.ts';
import type { Side } from './edgeCourse.ts';
import type { MotifEdge } from './motifEdges.ts';

/** Where in the schedule one half of the cloth stands. */
export interface SchedulePlace {
  readonly side: Side;
  /** Turns woven there, header included: the middle of that half's ends, and its uncertainty. */
  readonly turns: number;
  readonly sigmaTurns: number;
  /** By how many turns changes of yarn come later (positive) than charted; null where none is seen. */
  readonly laterTurns: number | null;
}

/** Heights over the measured pass give the turns woven; changes of yarn give how far they stray from the chart. */
export function schedulePlaces(reading: LoomReading, piece: Piece, edges: readonly MotifEdge[]): SchedulePlace[] {
  const { pass } = reading;
  if (!pass) return [];
  const middle = (piece.warp.ends - 1) / 2;
  return (['left', 'right'] as const).flatMap((side): SchedulePlace[] => {
    const own = reading.ends.flatMap((end) =>
      end.fell && (side === 'left' ? end.index < middle : end.index > middle) ? [end.fell] : [],
    );
    if (own.length === 0) return [];
    const fell = median(own.map((one) => one.value));
    const fellSigma = median(own.map((one) => one.sigma));
    const turns = fell / pass.value / 2;
    const later = edges.flatMap((edge) => (edge.way === 'up' && edge.side === side ? [edge.off / 2] : []));
    return [
      {
        side,
        turns: Math.round(turns),
        sigmaTurns: Math.hypot(fellSigma / pass.value / 2, (turns * pass.sigma) / pass.value, 0.3),
        laterTurns: later.length > 0 ? median(later) : null,
      },
    ];
  });
}
