import { restack, type StackMove } from '../../../core/cartoon/stack.ts';
import { usePiece } from '../../state/pieceStore.ts';

/** A shape moved in the pile. */
export const restackShape = (id: string, move: StackMove): void =>
  usePiece.getState().change((now) => {
    const shapes = restack(now.shapes, id, move);
    return shapes === now.shapes ? now : { ...now, shapes };
  });
