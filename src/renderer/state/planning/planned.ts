import { useEffect } from 'react';
import { create } from 'zustand';
import type { Piece } from '../../../core/model/piece.ts';
import type { Plan } from '../../../core/plan/planPiece.ts';
import { usePiece } from '../pieceStore.ts';
import { openLine, type WorkerLine } from './workerLine.ts';

/** The newest plan there is, and the piece it was made of: while the weaver types it may be a moment behind. */
export interface Planned {
  readonly key: string;
  readonly piece: Piece;
  readonly plan: Plan;
  /** Places of the blocks that differ from what they were before the rest was last planned anew. */
  readonly anew: ReadonlySet<number>;
}

interface PlannedState {
  readonly planned: Planned | null;
  readonly trouble: string | null;
}

const usePlannedStore = create<PlannedState>(() => ({ planned: null, trouble: null }));

/** A run of changes, as in a drag or while typing, is planned when it pauses. */
const PAUSE_MS = 90;

let line: WorkerLine | null = null;
let wanted: Piece | null = null;
let wantedAt = 0;
let pause: ReturnType<typeof setTimeout> | undefined;

function want(piece: Piece): void {
  if (piece === wanted) return;
  const now = performance.now();
  const inARun = now - wantedAt < 2 * PAUSE_MS;
  wanted = piece;
  wantedAt = now;
  clearTimeout(pause);
  line ??= openLine('plan', (answer, of) => {
    const key = usePiece.getState().key;
    if (answer.kind === 'plan' && key !== null) {
      usePlannedStore.setState({
        planned: { key, piece: of, plan: answer.plan, anew: new Set(answer.anew) },
        trouble: null,
      });
    }
    if (answer.kind === 'trouble') usePlannedStore.setState({ trouble: answer.message });
  });
  const ask = () => line?.ask(piece, null);
  if (inARun) pause = setTimeout(ask, PAUSE_MS);
  else ask();
}

/** The newest plan of the open piece; null until the first is there. A plan that can't be made stops the screen. */
export function usePlanned(): Planned | null {
  const key = usePiece((state) => state.key);
  const piece = usePiece((state) => state.piece);
  const { planned, trouble } = usePlannedStore();
  // A whole plan is large to hand over: while a shape is in the hand it waits until it is let go.
  const held = usePiece((state) => state.gathering === 'drag');
  useEffect(() => {
    if (piece !== null && !held) want(piece);
  }, [piece, held]);
  if (trouble !== null) throw new Error(trouble);
  return planned !== null && planned.key === key ? planned : null;
}
