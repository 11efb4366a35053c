import { crc32 } from 'node:zlib';
import { minimalExif } from './minimalExif.ts';

const name = (bytes: Uint8Array, at: number): string => String.fromCharCode(...bytes.subarray(at, at + 4));

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let to = 0;
  for (const part of parts) {
    whole.set(part, to);
    to += part.length;
  }
  return whole;
}

/** Chunks of a PNG that say how to draw it. */
const PNG_KEPT = new Set([
  'IHDR',
  'PLTE',
  'IDAT',
  'IEND',
  'tRNS',
  'cHRM',
  'gAMA',
  'iCCP',
  'sBIT',
  'sRGB',
  'cICP',
  'pHYs',
  'bKGD',
]);

/** A PNG with the same picture and no metadata but its turn; null when it isn't laid out as PNGs are. */
export function stripPng(bytes: Uint8Array, orientation: number): Uint8Array | null {
  const parts: Uint8Array[] = [bytes.subarray(0, 8)];
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 8; at + 12 <= bytes.length; ) {
    const length = view.getUint32(at);
    const end = at + 12 + length;
    if (end > bytes.length) return null;
    const kind = name(bytes, at + 4);
    if (PNG_KEPT.has(kind)) parts.push(bytes.subarray(at, end));
    if (kind === 'IHDR') {
      const exif = minimalExif({ orientation });
      const chunk = new Uint8Array(12 + exif.length);
      const chunkView = new DataView(chunk.buffer);
      chunkView.setUint32(0, exif.length);
      chunk.set([0x65, 0x58, 0x49, 0x66], 4); // eXIf
      chunk.set(exif, 8);
      chunkView.setUint32(8 + exif.length, crc32(chunk.subarray(4, 8 + exif.length)));
      parts.push(chunk);
    }
    if (kind === 'IEND') return joined(parts);
    at = end;
  }
  return null;
}

/** Flags of a WebP's VP8X chunk. */
const HAS_EXIF = 0x08;
const HAS_XMP = 0x04;
const WEBP_KEPT = new Set(['VP8X', 'ICCP', 'ANIM', 'ANMF', 'ALPH', 'VP8 ', 'VP8L']);

/** A WebP with the same picture and no metadata but its turn; null when it isn't laid out as WebPs are. */
export function stripWebp(bytes: Uint8Array, orientation: number): Uint8Array | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const body: Uint8Array[] = [];
  let extended = false;
  for (let at = 12; at + 8 <= bytes.length; ) {
    const length = view.getUint32(at + 4, true);
    const end = at + 8 + length + (length % 2);
    if (at + 8 + length > bytes.length) return null;
    const kind = name(bytes, at);
    if (WEBP_KEPT.has(kind)) {
      const chunk = new Uint8Array(bytes.subarray(at, Math.min(end, bytes.length)));
      if (kind === 'VP8X') {
        extended = true;
        chunk[8] = (chunk[8]! & ~(HAS_EXIF | HAS_XMP)) | HAS_EXIF;
      }
      body.push(chunk);
    }
    at = end;
  }
  if (body.length === 0) return null;
  // Only the extended form can carry a turn; the plain forms never had one.
  if (extended) {
    const exif = minimalExif({ orientation });
    const chunk = new Uint8Array(8 + exif.length);
    chunk.set([0x45, 0x58, 0x49, 0x46]); // EXIF
    new DataView(chunk.buffer).setUint32(4, exif.length, true);
    chunk.set(exif, 8);
    body.push(chunk);
  }
  const head = new Uint8Array(12);
  head.set(bytes.subarray(0, 12));
  new DataView(head.buffer).setUint32(
    4,
    body.reduce((sum, part) => sum + part.length, 4),
    true,
  );
  return joined([head, ...body]);
}
