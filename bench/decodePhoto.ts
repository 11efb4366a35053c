import sharp from 'sharp';
import type { Photo } from '../src/core/photo/raster.ts';

/** Decodes picture bytes as displayed. */
export async function decodePhoto(bytes: Buffer): Promise<Photo> {
  const { data, info } = await sharp(bytes)
    .rotate()
    .toColourspace('srgb')
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const rgb = new Uint8Array(data.buffer, data.byteOffset, data.length);
  if (info.channels === 3) return { width: info.width, height: info.height, rgb };
  const spread = new Uint8Array(info.width * info.height * 3);
  for (let at = 0; at < info.width * info.height; at++) spread.fill(rgb[at * info.channels]!, at * 3, at * 3 + 3);
  return { width: info.width, height: info.height, rgb: spread };
}
