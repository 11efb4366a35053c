import { usePiece } from '../../state/pieceStore.ts';
import { useCartoon } from './cartoonStore.ts';

/** Takes a shape out; undo brings it back. */
export function removeShape(id: string): void {
  usePiece.getState().change((now) => ({ ...now, shapes: now.shapes.filter((shape) => shape.id !== id) }));
  useCartoon.getState().choose(null);
}
