import { minimalExif } from './minimalExif.ts';

const startsWith = (bytes: Uint8Array, at: number, text: string): boolean => {
  for (let i = 0; i < text.length; i++) if (bytes[at + i] !== text.charCodeAt(i)) return false;
  return true;
};

/** Segments that say how to draw the picture: JFIF, a colour profile, Adobe's colour turn. All others that speak go. */
function drawsThePicture(bytes: Uint8Array, at: number, marker: number): boolean {
  if (marker < 0xe0 || (marker > 0xef && marker !== 0xfe)) return true;
  if (marker === 0xe0) return startsWith(bytes, at + 4, 'JFIF\0');
  if (marker === 0xe2) return startsWith(bytes, at + 4, 'ICC_PROFILE\0');
  return marker === 0xee && startsWith(bytes, at + 4, 'Adobe');
}

/** Walks the scans to the end of the picture: what comes after (a film, a second picture) goes too. */
function endOfImage(bytes: Uint8Array, scan: number): number {
  let at = scan;
  while (at + 4 <= bytes.length) {
    // At a segment: step over it, then through coded data to the next marker that isn't stuffing or a restart.
    at += 2 + bytes[at + 2]! * 256 + bytes[at + 3]!;
    while (at + 1 < bytes.length) {
      const next = bytes[at + 1]!;
      if (bytes[at] === 0xff && next !== 0 && next !== 0xff && (next < 0xd0 || next > 0xd7)) break;
      at++;
    }
    if (bytes[at + 1] === 0xd9) return at + 2;
  }
  return bytes.length;
}

/**
 * A JPEG with the same picture, bit for bit, and no metadata but its turn.
 * @returns null when the file isn't laid out as JPEG files are.
 */
export function stripJpeg(bytes: Uint8Array, orientation: number): Uint8Array | null {
  const parts: Uint8Array[] = [bytes.subarray(0, 2)];
  const exif = minimalExif({ orientation });
  const segment = new Uint8Array(10 + exif.length);
  segment.set([0xff, 0xe1, 0, 8 + exif.length, 0x45, 0x78, 0x69, 0x66, 0, 0]);
  segment.set(exif, 10);
  parts.push(segment);
  let at = 2;
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (marker === 0xda) {
      parts.push(bytes.subarray(at, endOfImage(bytes, at)));
      const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
      let to = 0;
      for (const part of parts) {
        whole.set(part, to);
        to += part.length;
      }
      return whole;
    }
    if (marker === 0xd9 || (marker >= 0xd0 && marker <= 0xd8) || marker === 0x01) return null;
    const length = 2 + bytes[at + 2]! * 256 + bytes[at + 3]!;
    if (length < 4 || at + length > bytes.length) return null;
    if (drawsThePicture(bytes, at, marker)) parts.push(bytes.subarray(at, at + length));
    at += length;
  }
  return null;
}
