import { freeName, newShape, type StartingForm } from '../../../core/cartoon/newShape.ts';
import { clothBox, weavingGrid } from '../../../core/cartoon/snap.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useCartoon } from './cartoonStore.ts';
import { freeShapeId, yarnForNew } from './freeShape.ts';

/**
 * A starting form put on the middle of the cloth: the way to draw without a pointer.
 * @param called what such a form is called on screen.
 */
function put(piece: Piece, form: StartingForm, called: string): void {
  const id = freeShapeId(piece);
  const taken = piece.shapes.map((shape) => shape.name);
  const made = newShape(form, id, yarnForNew(piece), weavingGrid(piece), clothBox(piece), taken);
  const shape = { ...made, name: freeName(called, taken) };
  usePiece.getState().change((now) => ({ ...now, shapes: [shape, ...now.shapes] }));
  useCartoon.getState().choose(id);
  useCartoon.getState().setTool('select');
}

export const addHere = { put, freeId: freeShapeId };
