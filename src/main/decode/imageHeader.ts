import type { PhotoEnding } from '../store/photoStore.ts';

/** What a picture file says of itself in its first bytes. Sizes are as stored, before any EXIF turn. */
export interface ImageHeader {
  readonly ending: PhotoEnding;
  readonly width: number;
  readonly height: number;
}

const ascii = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, Math.min(to, bytes.length)));

const u16 = (bytes: Uint8Array, at: number): number => (bytes[at] ?? 0) * 256 + (bytes[at + 1] ?? 0);
const u32 = (bytes: Uint8Array, at: number): number => u16(bytes, at) * 65_536 + u16(bytes, at + 2);
const u24le = (bytes: Uint8Array, at: number): number =>
  (bytes[at] ?? 0) + (bytes[at + 1] ?? 0) * 256 + (bytes[at + 2] ?? 0) * 65_536;

/** JPEG (ITU-T T.81): walk the segments to the first start-of-frame. */
function jpeg(bytes: Uint8Array): ImageHeader | null {
  let at = 2;
  while (at + 9 < bytes.length) {
    if (bytes[at] !== 0xff) {
      at++;
      continue;
    }
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at++;
      continue;
    }
    const standsAlone = marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8);
    if (standsAlone) {
      at += 2;
      continue;
    }
    // End of image or start of scan before any frame: there is no picture to size.
    if (marker === 0xd9 || marker === 0xda) return null;
    const startsFrame = marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
    if (startsFrame) return { ending: 'jpg', width: u16(bytes, at + 7), height: u16(bytes, at + 5) };
    at += 2 + Math.max(2, u16(bytes, at + 2));
  }
  return null;
}

/** PNG (ISO/IEC 15948): the first chunk is IHDR. */
const png = (bytes: Uint8Array): ImageHeader | null =>
  bytes.length >= 24 && ascii(bytes, 12, 16) === 'IHDR'
    ? { ending: 'png', width: u32(bytes, 16), height: u32(bytes, 20) }
    : null;

/** WebP (RFC 9649): lossy, lossless or extended first chunk. */
function webp(bytes: Uint8Array): ImageHeader | null {
  if (bytes.length < 30) return null;
  switch (ascii(bytes, 12, 16)) {
    case 'VP8 ':
      return {
        ending: 'webp',
        width: (bytes[26]! + bytes[27]! * 256) & 0x3fff,
        height: (bytes[28]! + bytes[29]! * 256) & 0x3fff,
      };
    case 'VP8L': {
      const bits = u24le(bytes, 21) + bytes[24]! * 16_777_216;
      return { ending: 'webp', width: (bits & 0x3fff) + 1, height: (Math.floor(bits / 16_384) & 0x3fff) + 1 };
    }
    case 'VP8X':
      return { ending: 'webp', width: u24le(bytes, 24) + 1, height: u24le(bytes, 27) + 1 };
    default:
      return null;
  }
}

/** How far into a HEIF or AVIF file its description may reach. */
const META_REACH = 1 << 20;

/** HEIF and AVIF (ISO/IEC 23008-12): the largest `ispe` box, which says width and height of an item or its tiles. */
function heif(bytes: Uint8Array): ImageHeader | null {
  const brands: string[] = [ascii(bytes, 8, 12)];
  const end = Math.min(u32(bytes, 0), 256, bytes.length);
  for (let at = 16; at + 4 <= end; at += 4) brands.push(ascii(bytes, at, at + 4));
  const ending = brands.some((brand) => brand === 'avif' || brand === 'avis')
    ? 'avif'
    : brands.some((brand) => ['heic', 'heix', 'hevc', 'hevx', 'mif1', 'msf1'].includes(brand))
      ? 'heic'
      : null;
  if (ending === null) return null;
  let width = 0;
  let height = 0;
  const reach = Math.min(bytes.length - 16, META_REACH);
  for (let at = 0; at < reach; at++) {
    // 'ispe', then version and flags, then width and height
    if (bytes[at] !== 0x69 || bytes[at + 1] !== 0x73 || bytes[at + 2] !== 0x70 || bytes[at + 3] !== 0x65) continue;
    const w = u32(bytes, at + 8);
    const h = u32(bytes, at + 12);
    if (w * h > width * height) {
      width = w;
      height = h;
    }
  }
  return width > 0 && height > 0 ? { ending, width, height } : null;
}

/**
 * Reads kind and size from a picture's first bytes, without decoding anything.
 * @returns null when it is none of the kinds Plumbweft reads, or breaks off before it says its size.
 */
export function readImageHeader(bytes: Uint8Array): ImageHeader | null {
  if (bytes.length < 16) return null;
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return jpeg(bytes);
  if (bytes[0] === 0x89 && ascii(bytes, 1, 4) === 'PNG') return png(bytes);
  if (ascii(bytes, 0, 4) === 'RIFF' && ascii(bytes, 8, 12) === 'WEBP') return webp(bytes);
  if (ascii(bytes, 4, 8) === 'ftyp') return heif(bytes);
  return null;
}
