import { useMemo } from 'react';
import type { Piece } from '../../core/model/piece.ts';
import type { Progress } from '../../core/model/progress.ts';
import type { Plan } from '../../core/plan/planPiece.ts';
import { planFingerprint } from '../../core/report/planFingerprint.ts';
import {
  fellAfter,
  passesOfTurns,
  turnAfterPasses,
  type WorkStep,
  type WorkTurn,
  workSteps,
  workTurns,
} from '../../core/report/workTurns.ts';
import { usePiece } from './pieceStore.ts';
import { usePlanned } from './planning/planned.ts';

/** The order of work and how far it has got. */
export interface Work {
  readonly piece: Piece;
  readonly plan: Plan;
  readonly turns: readonly WorkTurn[];
  readonly steps: readonly WorkStep[];
  readonly passesDone: number;
  /** Place of the turn being woven; the number of turns when all are done. */
  readonly turn: number;
  /** Place of the block being woven; the number of blocks when all are done. */
  readonly block: number;
  /** The count belongs to a plan that has changed since. */
  readonly planChanged: boolean;
  readonly fingerprint: string;
}

/** Null until the first plan of the piece is there. */
export function useWork(): Work | null {
  const planned = usePlanned();
  const progress = usePiece((state) => state.progress);
  const told = useMemo(() => {
    if (planned === null) return null;
    const { piece, plan } = planned;
    const turns = workTurns(plan.blocks, plan.sequence);
    return {
      piece,
      plan,
      turns,
      steps: workSteps(turns),
      fingerprint: planFingerprint(plan.blocks, plan.sequence),
    };
  }, [planned]);
  if (told === null) return null;
  const passesDone = progress?.passesDone ?? 0;
  const turn = turnAfterPasses(told.turns, passesDone);
  return {
    ...told,
    passesDone,
    turn,
    block: told.turns[turn]?.block ?? told.plan.blocks.length,
    planChanged: progress !== null && progress.passesDone > 0 && progress.planFingerprint !== told.fingerprint,
  };
}

/** Passes standing on each end after so many passes of the work. */
export const wovenAfter = (work: Work, passesDone: number): Uint16Array =>
  fellAfter(work.turns, work.plan.blocks, work.plan.chart.ends, passesDone);

/** Counts turns and keeps the count at once. */
export function countTurns(work: Work, turnsDone: number): void {
  const progress: Progress = {
    passesDone: passesOfTurns(work.turns, Math.max(0, Math.min(work.turns.length, turnsDone))),
    planFingerprint: work.fingerprint,
    at: new Date().toISOString(),
  };
  usePiece.getState().setProgress(progress);
}
