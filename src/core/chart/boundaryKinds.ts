import type { Boundary, Piece, Shape } from '../model/piece.ts';
import { HEADER_AREA } from '../model/plan.ts';

/** The upper of the shapes that meet at a border; null where the ground, or a header, decides nothing. */
export function upperShape(piece: Piece, leftArea: number, rightArea: number): Shape | null {
  if (leftArea === HEADER_AREA || rightArea === HEADER_AREA) return null;
  const upper = leftArea !== 0 && (rightArea === 0 || leftArea < rightArea) ? leftArea : rightArea;
  return upper === 0 ? null : piece.shapes[upper - 1]!;
}

/** How the areas left and right of a border are held together: as the upper shape of the two asks. */
export const boundaryBetween = (piece: Piece, leftArea: number, rightArea: number): Boundary =>
  upperShape(piece, leftArea, rightArea)?.boundary ?? 'slit';

/** Whether two wefts must rise together along a border. */
export const risesTogether = (boundary: Boundary): boolean => boundary !== 'slit';

/** Whether any shape that shows asks for more than a slit. */
export const hasLinkedBoundary = (piece: Piece): boolean =>
  piece.shapes.some((shape) => !shape.hidden && risesTogether(shape.boundary));
