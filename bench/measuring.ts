import { checkPhoto } from '../src/core/compare/checkPhoto.ts';
import type { LoomReading } from '../src/core/model/check.ts';
import type { Piece } from '../src/core/model/piece.ts';
import type { Photo } from '../src/core/photo/raster.ts';
import { type Brief, pieceFromBrief } from '../src/core/project/brief.ts';

/** The one way every bench and the refusal tests measure: the program's own check, from photograph and piece alone. */
export function measure(photo: Photo, piece: Piece): LoomReading {
  return checkPhoto(photo, piece, {});
}

export const pieceOf = (brief: Brief): Piece => pieceFromBrief(brief, '2026-01-01T00:00:00.000Z');
