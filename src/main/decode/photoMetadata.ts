import { createRequire } from 'node:module';
import sharp from 'sharp';
import { photoLimits } from './photoLimits.ts';

/** What metadata says that a check keeps. Never a place. */
export interface PhotoMetadata {
  /** ISO 8601 instant; null when the photograph doesn't say. */
  readonly taken: string | null;
  /** Maker and model of the device, and which of its cameras where it says so: a telephone's front one mirrors, its back one doesn't. */
  readonly camera: string | null;
}

type Exifr = { parse(bytes: Uint8Array, options: object): Promise<Record<string, unknown> | undefined> };

const words = (value: unknown): string =>
  typeof value === 'string'
    ? // biome-ignore lint/suspicious/noControlCharactersInRegex: metadata often ends in nulls
      value.replace(/[\u0000-\u001f]/g, '').trim()
    : '';

/** Reads date and device; anything unreadable is simply not said. */
export async function readPhotoMetadata(bytes: Uint8Array): Promise<PhotoMetadata> {
  try {
    // The block is taken out of the file by libvips: exifr's own search through a damaged file can go on for ever.
    const { exif } = await sharp(bytes, { limitInputPixels: photoLimits.pixels }).metadata();
    if (exif === undefined) return { taken: null, camera: null };
    const exifr = createRequire(import.meta.url)('exifr') as Exifr;
    const headed = exif.subarray(0, 4).toString('latin1') === 'Exif';
    const found = await exifr.parse(headed ? exif.subarray(6) : exif, {
      pick: ['DateTimeOriginal', 'Make', 'Model', 'LensModel'],
      gps: false,
      xmp: false,
      icc: false,
      iptc: false,
    });
    const taken = found?.DateTimeOriginal;
    const maker = words(found?.Make);
    const model = words(found?.Model);
    const device = model.startsWith(maker) ? model : `${maker} ${model}`.trim();
    const lens = words(found?.LensModel);
    // A telephone's lenses repeat its model.
    const camera =
      model !== '' && lens.startsWith(model) ? lens : [device, lens].filter((said) => said !== '').join(', ');
    return {
      taken: taken instanceof Date && Number.isFinite(taken.getTime()) ? taken.toISOString() : null,
      camera: camera === '' ? null : camera.slice(0, 300),
    };
  } catch {
    return { taken: null, camera: null };
  }
}
