import { useMemo } from 'react';
import type { Piece } from '../../core/model/piece.ts';
import type { Progress } from '../../core/model/progress.ts';
import type { Plan } from '../../core/plan/planPiece.ts';
import { type BenchStep, benchSteps } from '../../core/report/benchSteps.ts';
import { fellAfter, passesOfTurns, turnAfterPasses, type WorkTurn, workTurns } from '../../core/report/workTurns.ts';
import { wovenFingerprint } from '../../core/report/wovenFingerprint.ts';
import { usePiece } from './pieceStore.ts';
import { usePlanned } from './planning/planned.ts';

/** The order of work and how far it has got. */
export interface Work {
  readonly piece: Piece;
  readonly plan: Plan;
  /** Places of the blocks that differ from what they were before the rest was last planned anew. */
  readonly anew: ReadonlySet<number>;
  readonly turns: readonly WorkTurn[];
  /** As they are woven at the bench. */
  readonly steps: readonly BenchStep[];
  readonly passesDone: number;
  /** Place of the turn being woven; the number of turns when all are done. */
  readonly turn: number;
  /** Place of the block being woven; the number of blocks when all are done. */
  readonly block: number;
  /** What the count says is woven is not what this plan would have woven. */
  readonly planChanged: boolean;
}

/** Null until the first plan of the piece is there. */
export function useWork(): Work | null {
  const planned = usePlanned();
  const progress = usePiece((state) => state.progress);
  const told = useMemo(() => {
    if (planned === null) return null;
    const { piece, plan, anew } = planned;
    const turns = workTurns(plan.blocks, plan.sequence);
    return { piece, plan, anew, turns, steps: benchSteps(turns, plan.blocks) };
  }, [planned]);
  const planChanged = useMemo(() => {
    if (told === null || progress === null || progress.passesDone === 0) return false;
    const { blocks, sequence } = told.plan;
    return progress.planFingerprint !== wovenFingerprint(blocks, sequence, progress.passesDone);
  }, [told, progress]);
  if (told === null) return null;
  const passesDone = progress?.passesDone ?? 0;
  const turn = turnAfterPasses(told.turns, passesDone);
  return {
    ...told,
    passesDone,
    turn,
    block: told.turns[turn]?.block ?? told.plan.blocks.length,
    planChanged,
  };
}

/** Turns that `turns` makes, a single pass being half of one. */
export const wholeTurns = (turns: readonly WorkTurn[]): number => turns.reduce((sum, turn) => sum + turn.passes, 0) / 2;

/** Passes standing on each end after so many passes of the work. */
export const wovenAfter = (work: Work, passesDone: number): Uint16Array =>
  fellAfter(work.turns, work.plan.blocks, work.plan.chart.ends, passesDone);

/** Counts turns and keeps the count at once; one taken over from a check stays then. */
export function countTurns(work: Pick<Work, 'turns' | 'plan'>, turnsDone: number): void {
  const passesDone = passesOfTurns(work.turns, Math.max(0, Math.min(work.turns.length, turnsDone)));
  const progress: Progress = {
    passesDone,
    planFingerprint: wovenFingerprint(work.plan.blocks, work.plan.sequence, passesDone),
    finished: usePiece.getState().progress?.finished ?? [],
    at: new Date().toISOString(),
  };
  usePiece.setState({ countedByCheck: null });
  usePiece.getState().setProgress(progress);
}
