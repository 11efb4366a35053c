import sharp from 'sharp';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import { readImageHeader } from '../decode/imageHeader.ts';
import { photoLimits } from '../decode/photoLimits.ts';
import { stripPng, stripWebp } from './stripChunks.ts';
import { stripHeif } from './stripHeif.ts';
import { stripJpeg } from './stripJpeg.ts';

/** The EXIF turn, 1 to 8, whatever kind of file it stands in. */
async function turnOf(bytes: Uint8Array): Promise<number> {
  try {
    return (await sharp(bytes, { limitInputPixels: photoLimits.pixels }).metadata()).orientation ?? 1;
  } catch {
    return 1;
  }
}

/**
 * The same picture without what its metadata says: places, owners, serial numbers, previews, films behind it. Only
 * what drawing needs is kept (turn, colour profile), by a list of what may stay rather than of what must go.
 */
export async function stripMetadata(bytes: Uint8Array): Promise<Outcome<Uint8Array, 'cannot-strip'>> {
  const header = readImageHeader(bytes);
  let clean: Uint8Array | null = null;
  switch (header?.ending) {
    case 'jpg':
      clean = stripJpeg(bytes, await turnOf(bytes));
      break;
    case 'png':
      clean = stripPng(bytes, await turnOf(bytes));
      break;
    case 'webp':
      clean = stripWebp(bytes, await turnOf(bytes));
      break;
    case 'heic':
    case 'avif':
      clean = stripHeif(bytes);
      break;
    case undefined:
      break;
  }
  return clean === null
    ? failure(
        'cannot-strip',
        'The places in a photograph could not be taken out, so nothing was exported.',
        'Throw that photograph away first, or keep places on purpose: plumbweft export --keep-places DIR FILE.zip.',
        header?.ending ?? 'unknown kind',
      )
    : success(clean);
}
