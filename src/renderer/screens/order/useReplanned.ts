import { useEffect, useRef, useState } from 'react';
import type { Piece } from '../../../core/model/piece.ts';
import { changedBlocks } from '../../../core/plan/blocksAnew.ts';
import { type ReplanEffect, replanEffect } from '../../../core/replan/replanEffect.ts';
import { openLine, type WorkerLine } from '../../state/planning/workerLine.ts';
import { withBeat } from '../../state/replan.ts';
import { type Work, wovenAfter } from '../../state/useWork.ts';

export interface Replanned {
  readonly effect: ReplanEffect;
  readonly blocks: { readonly anew: number; readonly toCome: number };
}

/**
 * What the rest would become with passes of another height, worked out away from the page.
 * @param pass mm; null when there is nothing to compare with. @returns null until it is known.
 */
export function useReplanned(work: Work, pass: number | null): Replanned | null {
  const line = useRef<WorkerLine | null>(null);
  const [answered, setAnswered] = useState<{ readonly pass: number; readonly told: Replanned } | null>(null);
  const take = useRef<(piece: Piece, plan: Work['plan'], anew: readonly number[]) => void>(() => undefined);
  take.current = (piece, plan, anew) => {
    const before = { ...work.plan, piece: work.piece };
    let passes = 0;
    const toCome = plan.blocks.filter((block) => {
      passes += block.rows.length;
      return passes > work.passesDone;
    }).length;
    // Before the first turn nothing stands, and nothing is kept of the plan before: the two are compared as they are.
    const changed = work.passesDone === 0 ? changedBlocks(work.plan.blocks, plan.blocks).length : anew.length;
    const effect = replanEffect(before, { ...plan, piece }, wovenAfter(work, work.passesDone));
    setAnswered({ pass: piece.cloth.passHeight, told: { effect, blocks: { anew: changed, toCome } } });
  };
  useEffect(() => {
    const opened = openLine('plan', (answer, piece) => {
      if (answer.kind === 'plan') take.current(piece, answer.plan, answer.anew);
    });
    line.current = opened;
    return () => opened.close();
  }, []);
  useEffect(() => {
    if (pass === null) return;
    line.current?.ask(withBeat(work.piece, work.plan, work.passesDone, pass, new Date(0).toISOString()), null);
  }, [work.piece, work.plan, work.passesDone, pass]);
  return answered !== null && answered.pass === pass ? answered.told : null;
}
