import { strFromU8, strToU8 } from 'fflate';

/**
 * How a question or an answer travels: four bytes (big-endian length of the JSON), one that is 1 when raw bytes follow
 * and 0 when none do, the JSON as UTF-8, then the raw
 * bytes, if any, to the end. The same both ways.
 */
export interface Envelope {
  readonly json: unknown;
  readonly bytes: Uint8Array | null;
}

/** Largest JSON part, in bytes. */
export const MAX_JSON_BYTES = 64 * 1024 * 1024;

export function packEnvelope(json: unknown, bytes: Uint8Array | null): Uint8Array {
  const text = strToU8(JSON.stringify(json));
  const packed = new Uint8Array(5 + text.length + (bytes?.length ?? 0));
  new DataView(packed.buffer).setUint32(0, text.length);
  // One byte tells "no bytes" from "bytes, but none in them".
  packed[4] = bytes === null ? 0 : 1;
  packed.set(text, 5);
  if (bytes !== null) packed.set(bytes, 5 + text.length);
  return packed;
}

/** @returns null when the envelope is not as described. */
export function unpackEnvelope(packed: Uint8Array): Envelope | null {
  if (packed.length < 5) return null;
  const length = new DataView(packed.buffer, packed.byteOffset, packed.byteLength).getUint32(0);
  const hasBytes = packed[4];
  if (length > MAX_JSON_BYTES || 5 + length > packed.length || (hasBytes !== 0 && hasBytes !== 1)) return null;
  if (hasBytes === 0 && packed.length !== 5 + length) return null;
  try {
    const json: unknown = JSON.parse(strFromU8(packed.subarray(5, 5 + length)));
    return { json, bytes: hasBytes === 1 ? packed.subarray(5 + length) : null };
  } catch {
    return null;
  }
}
