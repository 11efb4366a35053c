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

/** Some of a photograph's EXIF fields; anything unreadable is simply not said. */
async function readFields(bytes: Uint8Array, pick: readonly string[]): Promise<Record<string, unknown>> {
  try {
    // The block is taken out of the file by libvips: exifr's own search through a damaged file can go on for ever.
    const { exif } = await sharp(bytes, { limitInputPixels: photoLimits.pixels }).metadata();
    if (exif === undefined) return {};
    const exifr = createRequire(import.meta.url)('exifr') as Exifr;
    const headed = exif.subarray(0, 4).toString('latin1') === 'Exif';
    const options = { pick, gps: false, xmp: false, icc: false, iptc: false };
    return (await exifr.parse(headed ? exif.subarray(6) : exif, options)) ?? {};
  } catch {
    return {};
  }
}

/** Reads date and device. */
export async function readPhotoMetadata(bytes: Uint8Array): Promise<PhotoMetadata> {
  const found = await readFields(bytes, ['DateTimeOriginal', 'Make', 'Model', 'LensModel']);
  const taken = found.DateTimeOriginal;
  const maker = words(found.Make);
  const model = words(found.Model);
  const device = model.startsWith(maker) ? model : `${maker} ${model}`.trim();
  const lens = words(found.LensModel);
  // A telephone's lenses repeat its model.
  const camera =
    model !== '' && lens.startsWith(model) ? lens : [device, lens].filter((said) => said !== '').join(', ');
  return {
    taken: taken instanceof Date && Number.isFinite(taken.getTime()) ? taken.toISOString() : null,
    camera: camera === '' ? null : camera.slice(0, 300),
  };
}

/** Diagonal of a picture on 35 mm film, 36 × 24 mm. */
const FILM_DIAGONAL = Math.hypot(36, 24);
/** No camera has a shorter or a longer lens than these, mm on 35 mm film: what says so is damaged. */
const SHORTEST = 8;
const LONGEST = 1200;

/** The focal length that the file tells, in diagonals of the picture; null where it tells none. */
export async function readFocal(bytes: Uint8Array): Promise<number | null> {
  const { FocalLengthIn35mmFormat: told } = await readFields(bytes, ['FocalLengthIn35mmFormat']);
  return typeof told === 'number' && told >= SHORTEST && told <= LONGEST ? told / FILM_DIAGONAL : null;
}
