import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import { type ImageHeader, readImageHeader } from './imageHeader.ts';
import { photoLimits } from './photoLimits.ts';

export type PhotoTag = 'photo-unreadable' | 'photo-too-large' | 'photo-too-small' | 'took-too-long';

const other = 'Choose a photograph as JPEG, PNG, WebP, AVIF or HEIC.';

/** Said of a file that is larger than is ever read. */
export const tooManyBytes = (bytes: number): Outcome<never, PhotoTag> =>
  failure(
    'photo-too-large',
    `The file is ${Math.round(bytes / 1e6)} MB; up to ${Math.floor(photoLimits.bytes / 1e6)} MB can be read.`,
    'Save a smaller copy and choose that.',
  );

/** Looks at a file before anything decodes it: what it is, and whether it is within the limits. */
export function inspectPhoto(bytes: Uint8Array): Outcome<ImageHeader, PhotoTag> {
  if (bytes.length === 0) {
    return failure(
      'photo-unreadable',
      'The file is empty: there is no photograph in it.',
      'Copy it from the camera again.',
    );
  }
  if (bytes.length > photoLimits.bytes) return tooManyBytes(bytes.length);
  const header = readImageHeader(bytes);
  if (header === null) {
    return failure('photo-unreadable', "The file isn't a photograph Plumbweft can read, or it breaks off.", other);
  }
  const { width, height } = header;
  if (width === 0 || height === 0) {
    return failure('photo-unreadable', 'The photograph says it has no size.', other);
  }
  if (width > photoLimits.side || height > photoLimits.side || width * height > photoLimits.pixels) {
    return failure(
      'photo-too-large',
      `The photograph says it is ${width} × ${height} pixels, more than can be measured.`,
      'Save a copy no larger than 8000 pixels on its longer side and choose that.',
    );
  }
  if (Math.min(width, height) < photoLimits.smallestSide) {
    return failure(
      'photo-too-small',
      `The photograph is only ${width} × ${height} pixels, too few to see the strings.`,
      'Use the photograph as the camera took it, not a preview of it.',
    );
  }
  return success(header);
}
