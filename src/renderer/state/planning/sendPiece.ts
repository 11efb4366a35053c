import type { Piece, Shape } from '../../../core/model/piece.ts';
import type { SentPiece } from './questions.ts';

/** Packs a piece for a worker that was sent `before`: shapes that are still the same are named, not copied. */
export function sendPiece(piece: Piece, before: readonly Shape[]): SentPiece {
  const known = new Map(before.map((shape, index) => [shape, index]));
  const { shapes, ...rest } = piece;
  return { rest, shapes: shapes.map((shape) => known.get(shape) ?? shape) };
}

/** The piece as it was packed, given the shapes that came before. */
export function receivePiece(sent: SentPiece, before: readonly Shape[]): Piece {
  const shapes = sent.shapes.map((shape) => (typeof shape === 'number' ? before[shape]! : shape));
  return { ...sent.rest, shapes };
}
