import type { Boundary, Piece } from '../model/piece.ts';
import { HEADER_AREA } from '../model/plan.ts';

/**
 * How the areas left and right of a border are held together: as the upper shape of the two asks. The ground asks for
 * nothing, and header and footer only lie under and over.
 */
export function boundaryBetween(piece: Piece, leftArea: number, rightArea: number): Boundary {
  if (leftArea === HEADER_AREA || rightArea === HEADER_AREA) return 'slit';
  const upper = leftArea !== 0 && (rightArea === 0 || leftArea < rightArea) ? leftArea : rightArea;
  return upper === 0 ? 'slit' : piece.shapes[upper - 1]!.boundary;
}

/** Whether two wefts must rise together along a border. */
export const risesTogether = (boundary: Boundary): boolean => boundary !== 'slit';

/** Whether any shape that shows asks for more than a slit. */
export const hasLinkedBoundary = (piece: Piece): boolean =>
  piece.shapes.some((shape) => !shape.hidden && risesTogether(shape.boundary));
