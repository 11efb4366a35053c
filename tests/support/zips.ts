import { crc32, deflateRawSync } from 'node:zlib';

/** One entry of a zip, each field free to be wrong. */
export interface RawEntry {
  readonly name: string | Uint8Array;
  readonly bytes: Uint8Array;
  readonly compress?: boolean;
  /** Instead of the true ones. */
  readonly crc?: number;
  readonly size?: number;
  /** External attributes: the Unix mode in the upper half. */
  readonly mode?: number;
  readonly flags?: number;
  /** A different name in the entry's own header than in the list at the end. */
  readonly localName?: string;
}

const u16 = (value: number) => [value & 255, (value >> 8) & 255];
const u32 = (value: number) => [...u16(value & 0xffff), ...u16(value >>> 16)];
const u64 = (value: number) => [...u32(value % 2 ** 32), ...u32(Math.floor(value / 2 ** 32))];
const text = (name: string | Uint8Array) => (typeof name === 'string' ? new TextEncoder().encode(name) : name);

/** A zip written by hand, so that it can be wrong in ways no library writes. */
export function rawZip(entries: readonly RawEntry[], options: { readonly count?: number } = {}): Uint8Array {
  const parts: Uint8Array[] = [];
  const central: Uint8Array[] = [];
  let at = 0;
  for (const entry of entries) {
    const body = entry.compress ? deflateRawSync(entry.bytes) : entry.bytes;
    const crc = entry.crc ?? crc32(entry.bytes);
    const size = entry.size ?? entry.bytes.length;
    const name = text(entry.name);
    const local = text(entry.localName ?? entry.name);
    const shared = [
      ...u16(entry.flags ?? 0x800),
      ...u16(entry.compress ? 8 : 0),
      ...u32(0x5821_0000),
      ...u32(crc),
      ...u32(body.length),
      ...u32(size),
    ];
    const head = Uint8Array.from([...u32(0x0403_4b50), ...u16(20), ...shared, ...u16(local.length), ...u16(0)]);
    central.push(
      Uint8Array.from([
        ...u32(0x0201_4b50),
        ...u16(0x0314),
        ...u16(20),
        ...shared,
        ...u16(name.length),
        ...u16(0),
        ...u16(0),
        ...u16(0),
        ...u16(0),
        ...u32(((entry.mode ?? 0o100_644) << 16) >>> 0),
        ...u32(at),
      ]),
      name,
    );
    parts.push(head, local, body);
    at += head.length + local.length + body.length;
  }
  const directory = central.reduce((sum, part) => sum + part.length, 0);
  const count = options.count ?? entries.length;
  // More entries than 16 bits can count need the larger form of the end: the record, and where it lies.
  const large = count > 0xffff;
  const largeEnd = large
    ? Uint8Array.from([
        ...u32(0x0606_4b50),
        ...u64(44),
        ...u16(45),
        ...u16(45),
        ...u32(0),
        ...u32(0),
        ...u64(count),
        ...u64(count),
        ...u64(directory),
        ...u64(at),
        ...u32(0x0706_4b50),
        ...u32(0),
        ...u64(at + directory),
        ...u32(1),
      ])
    : new Uint8Array(0);
  const end = Uint8Array.from([
    ...u32(0x0605_4b50),
    ...u16(0),
    ...u16(0),
    ...u16(large ? 0xffff : count),
    ...u16(large ? 0xffff : count),
    ...u32(large ? 0xffff_ffff : directory),
    ...u32(large ? 0xffff_ffff : at),
    ...u16(0),
  ]);
  return Buffer.concat([...parts, ...central, largeEnd, end]);
}
