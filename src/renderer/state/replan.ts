import type { Piece } from '../../core/model/piece.ts';
import { mm } from '../../core/model/units.ts';
import { rowsInOrder } from '../../core/order/rowsInOrder.ts';
import type { Plan } from '../../core/plan/planPiece.ts';
import { planPiece } from '../../core/plan/planPiece.ts';
import { usePiece } from './pieceStore.ts';
import { useShell } from './shellStore.ts';

/** A beat that was measured, mm a pass. */
export interface MeasuredBeat {
  readonly pass: number;
  readonly sigma: number;
}

/** Passes on the highest end after the first so many of the order. */
export function highestAfter(plan: Plan, passesDone: number): number {
  let highest = 0;
  for (const { block, row } of rowsInOrder(plan.blocks, plan.sequence).slice(0, passesDone)) {
    highest = Math.max(highest, plan.blocks[block]!.rows[row]!.pass + 1);
  }
  return highest;
}

/**
 * The piece with its rest laid over passes of a measured height. Before the first turn that is only another height of a
 * pass; once weaving has begun, what stands keeps its plan.
 */
export function withBeat(piece: Piece, plan: Plan, passesDone: number, pass: number, at: string): Piece {
  const passHeight = mm(pass);
  const cloth = { ...piece.cloth, passHeight, passHeightSource: 'measured' } as const;
  const highest = highestAfter(plan, passesDone);
  if (highest === 0) return { ...piece, cloth };
  const record = {
    at,
    passesDone,
    measured: { passes: highest, height: highest * pass },
    passHeightBefore: piece.cloth.passHeight,
  };
  // Asked again at the same turn, the newer measurement takes the older one's place.
  const kept = (piece.cloth.replans ?? []).filter((each) => each.passesDone < passesDone);
  const replaced = (piece.cloth.replans ?? []).find((each) => each.passesDone >= passesDone);
  const passHeightBefore = replaced?.passHeightBefore ?? record.passHeightBefore;
  return { ...piece, cloth: { ...cloth, replans: [...kept, { ...record, passHeightBefore }] } };
}

/** Plans the rest of the open piece anew by a measured beat, as one step that can be undone, and opens the order of work. */
export function replanRest(pass: number): void {
  const { piece, progress, change } = usePiece.getState();
  if (piece === null) return;
  const next = withBeat(piece, planPiece(piece), progress?.passesDone ?? 0, pass, new Date().toISOString());
  change(() => next);
  useShell.getState().goTo('order');
}
