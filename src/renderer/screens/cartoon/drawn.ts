import { freeName, plainShape } from '../../../core/cartoon/newShape.ts';
import type { ShapeForm } from '../../../core/model/piece.ts';
import { clothMm } from '../../../core/model/units.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useCartoon } from './cartoonStore.ts';
import { freeShapeId, yarnForNew } from './freeShape.ts';

/** Puts a form that was drawn on top of the others, under a name like `called`, and chooses it. */
export function addDrawn(form: ShapeForm, called: string): void {
  const { piece, change } = usePiece.getState();
  if (piece === null) return;
  const id = freeShapeId(piece);
  const taken = piece.shapes.map((shape) => shape.name);
  change((now) => ({
    ...now,
    shapes: [plainShape(id, freeName(called, taken), yarnForNew(now), form), ...now.shapes],
  }));
  const { choose, setTool } = useCartoon.getState();
  choose(id);
  setTool('select');
}

/** Closes the polygon being drawn; with fewer than three corners there is none. */
export function finishPolygon(called: string): void {
  const { draft, setDraft } = useCartoon.getState();
  setDraft([]);
  if (draft.length < 3) return;
  addDrawn({ kind: 'polygon', points: draft.map(({ x, y }) => ({ x: clothMm(x), y: clothMm(y) })) }, called);
}
