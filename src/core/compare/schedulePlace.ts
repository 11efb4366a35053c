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

/** Passes standing on one end, header included: the height of its fell over the measured pass. */
export interface StandingPasses {
  readonly end: number;
  readonly passes: number;
  /** Of the fell's height alone: what the pass's own sigma does is common to all ends. */
  readonly sigma: number;
}

/** For every end whose fell was read; empty where the passes were not. */
export const passesStanding = ({ pass, ends }: LoomReading): StandingPasses[] =>
  pass === null
    ? []
    : ends.flatMap(({ index, fell }) =>
        fell === null ? [] : [{ end: index, passes: fell.value / pass.value, sigma: fell.sigma / pass.value }],
      );

/** Heights over the measured pass give the turns woven; changes of yarn give how far they stray from the chart. */
export function schedulePlaces(reading: LoomReading, piece: Piece, edges: readonly MotifEdge[]): SchedulePlace[] {
  const { pass } = reading;
  if (!pass) return [];
  const standing = passesStanding(reading);
  const middle = (piece.warp.ends - 1) / 2;
  return (['left', 'right'] as const).flatMap((side): SchedulePlace[] => {
    const own = standing.filter(({ end }) => (side === 'left' ? end < middle : end > middle));
    if (own.length === 0) return [];
    const turns = median(own.map(({ passes }) => passes)) / 2;
    const sigma = median(own.map((one) => one.sigma)) / 2;
    const later = edges.flatMap((edge) => (edge.way === 'up' && edge.side === side ? [edge.off / 2] : []));
    return [
      {
        side,
        turns: Math.round(turns),
        sigmaTurns: Math.hypot(sigma, (turns * pass.sigma) / pass.value, 0.3),
        laterTurns: later.length > 0 ? median(later) : null,
      },
    ];
  });
}
