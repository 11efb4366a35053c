import { createRequire } from 'node:module';
import sharp from 'sharp';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import type { Photo } from '../../core/photo/raster.ts';
import { inspectPhoto, type PhotoTag } from './inspectPhoto.ts';
import { photoLimits } from './photoLimits.ts';
import { readFocal } from './photoMetadata.ts';

// One photograph at a time, on one core: a weaver's computer has other work, and memory stays bounded.
sharp.cache(false);
sharp.concurrency(1);

type HeicPicture = { readonly width: number; readonly height: number; decode(): Promise<{ data: Uint8ClampedArray }> };
type HeicDecoder = { all(input: { buffer: Uint8Array }): Promise<HeicPicture[] & { dispose(): void }> };

/** libheif applies the file's own turns and mirrors, so no EXIF turn is applied after it. */
async function decodeHeic(bytes: Uint8Array): Promise<Outcome<Photo, PhotoTag>> {
  const decoder = createRequire(import.meta.url)('heic-decode') as HeicDecoder;
  const pictures = await decoder.all({ buffer: bytes });
  try {
    const first = pictures[0];
    if (first === undefined) throw new Error('no picture inside');
    if (first.width * first.height > photoLimits.pixels) {
      return failure(
        'photo-too-large',
        `The photograph is ${first.width} × ${first.height} pixels, more than can be measured.`,
        'Save a copy no larger than 8000 pixels on its longer side and choose that.',
      );
    }
    const { data } = await first.decode();
    const count = first.width * first.height;
    const rgb = new Uint8Array(count * 3);
    for (let pixel = 0; pixel < count; pixel++) {
      rgb[pixel * 3] = data[pixel * 4]!;
      rgb[pixel * 3 + 1] = data[pixel * 4 + 1]!;
      rgb[pixel * 3 + 2] = data[pixel * 4 + 2]!;
    }
    return success({ width: first.width, height: first.height, rgb });
  } finally {
    pictures.dispose();
  }
}

/** JPEG, PNG, WebP, AVIF: EXIF turns 1 to 8 applied, colours as sRGB, see-through parts on white. */
async function decodeWithSharp(bytes: Uint8Array): Promise<Photo> {
  const { data, info } = await sharp(bytes, { limitInputPixels: photoLimits.pixels, failOn: 'truncated' })
    .timeout({ seconds: photoLimits.decodeSeconds })
    .autoOrient()
    .flatten({ background: '#ffffff' })
    .toColourspace('srgb')
    .raw({ depth: 'uchar' })
    .toBuffer({ resolveWithObject: true });
  const count = info.width * info.height;
  if (info.channels === 3) {
    return { width: info.width, height: info.height, rgb: new Uint8Array(data.buffer, data.byteOffset, count * 3) };
  }
  // A grey picture can come as one channel.
  const rgb = new Uint8Array(count * 3);
  for (let pixel = 0; pixel < count; pixel++) {
    const grey = data[pixel * info.channels]!;
    rgb[pixel * 3] = grey;
    rgb[pixel * 3 + 1] = grey;
    rgb[pixel * 3 + 2] = grey;
  }
  return { width: info.width, height: info.height, rgb };
}

/** Decodes a photograph as it is displayed. The header is looked at first, so a hostile one is never decoded. */
export async function decodePhoto(bytes: Uint8Array): Promise<Outcome<Photo, PhotoTag>> {
  const header = inspectPhoto(bytes);
  if (!header.ok) return header;
  try {
    const decoded = header.value.ending === 'heic' ? await decodeHeic(bytes) : success(await decodeWithSharp(bytes));
    if (!decoded.ok) return decoded;
    const focal = await readFocal(bytes);
    return focal === null ? decoded : success({ ...decoded.value, focal });
  } catch (thrown) {
    const message = thrown instanceof Error ? thrown.message : String(thrown);
    if (message.includes('timeout')) {
      return failure(
        'took-too-long',
        `The photograph took longer than ${photoLimits.decodeSeconds} seconds to open.`,
        'Save a smaller copy and choose that.',
        message,
      );
    }
    return failure(
      'photo-unreadable',
      "The photograph breaks off or is damaged, so it can't be read whole.",
      'Copy it from the camera again, or take it again.',
      message.slice(0, 300),
    );
  }
}
