import { freeName } from '../../../core/cartoon/newShape.ts';
import type { Piece } from '../../../core/model/piece.ts';

/** An id no shape of the piece has. */
export function freeShapeId(piece: Piece): string {
  const taken = new Set(piece.shapes.map((shape) => shape.id));
  let number = piece.shapes.length;
  while (taken.has(`s${number}`)) number++;
  return `s${number}`;
}

/** What the next shape like one of that name is called: after Flame and Flame 2 comes Flame 3. */
export const nextName = (name: string, taken: readonly string[]): string => freeName(name.replace(/ \d+$/, ''), taken);

/** A yarn for a new shape that shows against the ground. */
export const yarnForNew = (piece: Piece): string =>
  piece.yarns.find((yarn) => yarn.id !== piece.cloth.ground && yarn.id !== piece.cloth.headerYarn)?.id ??
  piece.yarns.find((yarn) => yarn.id !== piece.cloth.ground)?.id ??
  piece.cloth.ground;
