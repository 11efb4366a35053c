import sharp from 'sharp';
import type { Photo } from '../../core/photo/raster.ts';

/** A picture for the screen. */
export interface DisplayImage {
  readonly width: number;
  readonly height: number;
  readonly jpeg: Uint8Array;
}

/** Shrinks a decoded photograph to fit and packs it as JPEG without any metadata. Never enlarges. */
export async function displayJpeg(
  photo: Photo,
  fit: { readonly width?: number; readonly height?: number },
): Promise<DisplayImage> {
  const { data, info } = await sharp(photo.rgb, { raw: { width: photo.width, height: photo.height, channels: 3 } })
    .resize({ ...fit, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 85 })
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, jpeg: new Uint8Array(data) };
}
