import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import type { Piece } from '../../src/core/model/piece.ts';
import type { Photo } from '../../src/core/photo/raster.ts';
import { parseBrief, pieceFromBrief } from '../../src/core/project/brief.ts';

/** Decodes a picture file as displayed. */
export async function loadPhoto(file: string): Promise<Photo> {
  const { data, info } = await sharp(file)
    .rotate()
    .removeAlpha()
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, rgb: new Uint8Array(data.buffer, data.byteOffset, data.length) };
}

/** Reads NAME.brief.json as a piece. */
export function loadPiece(file: string): Piece {
  const brief = parseBrief(JSON.parse(readFileSync(file, 'utf8')));
  if (!brief.ok) throw new Error(`${file}: ${brief.problem.sentence}`);
  return pieceFromBrief(brief.value, '2026-01-01T00:00:00.000Z');
}
