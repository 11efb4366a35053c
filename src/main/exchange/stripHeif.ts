/** One box of an ISO base media file (ISO/IEC 14496-12). */
interface Box {
  readonly kind: string;
  readonly from: number;
  readonly to: number;
}

class Reader {
  readonly view: DataView;
  constructor(readonly bytes: Uint8Array) {
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }
  /** An unsigned number of 0, 1, 2, 4 or 8 bytes. */
  number(at: number, size: number): number {
    switch (size) {
      case 0:
        return 0;
      case 1:
        return this.view.getUint8(at);
      case 2:
        return this.view.getUint16(at);
      case 4:
        return this.view.getUint32(at);
      default:
        return Number(this.view.getBigUint64(at));
    }
  }
  boxes(from: number, to: number): Box[] {
    const found: Box[] = [];
    for (let at = from; at + 8 <= to; ) {
      const short = this.number(at, 4);
      const size = short === 1 ? this.number(at + 8, 8) : short === 0 ? to - at : short;
      if (size < 8 || at + size > to) break;
      const kind = String.fromCharCode(...this.bytes.subarray(at + 4, at + 8));
      found.push({ kind, from: at + (short === 1 ? 16 : 8), to: at + size });
      at += size;
    }
    return found;
  }
}

/** Numbers of the items that speak about the picture: EXIF, and XMP or other texts (`mime`, `uri `). */
function speakingItems(reader: Reader, iinf: Box): Set<number> {
  const items = new Set<number>();
  const version = reader.number(iinf.from, 1);
  for (const infe of reader.boxes(iinf.from + 4 + (version === 0 ? 2 : 4), iinf.to)) {
    if (infe.kind !== 'infe') continue;
    const infeVersion = reader.number(infe.from, 1);
    if (infeVersion < 2) continue;
    const idSize = infeVersion === 2 ? 2 : 4;
    const item = reader.number(infe.from + 4, idSize);
    const at = infe.from + 4 + idSize + 2;
    const kind = String.fromCharCode(...reader.bytes.subarray(at, at + 4));
    if (kind === 'Exif' || kind === 'mime' || kind === 'uri ') items.add(item);
  }
  return items;
}

/** Where those items' bytes lie in the file: [from, length] pairs; null when they lie where this can't follow. */
function extents(reader: Reader, iloc: Box, items: Set<number>, idat: Box | undefined): [number, number][] | null {
  const found: [number, number][] = [];
  const version = reader.number(iloc.from, 1);
  const sizes = reader.number(iloc.from + 4, 2);
  const [offsetSize, lengthSize, baseSize] = [sizes >> 12, (sizes >> 8) & 15, (sizes >> 4) & 15];
  const indexSize = version === 0 ? 0 : sizes & 15;
  const wide = version === 2 ? 4 : 2;
  let at = iloc.from + 6;
  const count = reader.number(at, wide);
  at += wide;
  for (let i = 0; i < count; i++) {
    const item = reader.number(at, wide);
    at += wide;
    const method = version === 0 ? 0 : reader.number(at, 2) & 15;
    at += (version === 0 ? 0 : 2) + 2;
    const base = reader.number(at, baseSize);
    at += baseSize;
    const parts = reader.number(at, 2);
    at += 2;
    for (let part = 0; part < parts; part++) {
      at += indexSize;
      const offset = reader.number(at, offsetSize);
      at += offsetSize;
      const length = reader.number(at, lengthSize);
      at += lengthSize;
      if (!items.has(item)) continue;
      if (method > 1 || (method === 1 && idat === undefined)) return null;
      found.push([base + offset + (method === 1 ? idat!.from : 0), length]);
    }
  }
  return found;
}

/**
 * A HEIC or AVIF with the same picture and its metadata items blanked with zeros where they lie; turns are kept, for
 * in these files they are properties of the picture, not metadata.
 * @returns null when the file isn't laid out as described.
 */
export function stripHeif(bytes: Uint8Array): Uint8Array | null {
  try {
    const reader = new Reader(bytes);
    const meta = reader.boxes(0, bytes.length).find((box) => box.kind === 'meta');
    if (meta === undefined) return null;
    const inside = reader.boxes(meta.from + 4, meta.to);
    const iinf = inside.find((box) => box.kind === 'iinf');
    const iloc = inside.find((box) => box.kind === 'iloc');
    if (iinf === undefined || iloc === undefined) return null;
    const items = speakingItems(reader, iinf);
    const places = extents(
      reader,
      iloc,
      items,
      inside.find((box) => box.kind === 'idat'),
    );
    if (places === null) return null;
    // Not slice(): of a Buffer that would be the same memory.
    const clean = new Uint8Array(bytes);
    for (const [from, length] of places) {
      if (from < 0 || from + length > bytes.length) return null;
      clean.fill(0, from, from + length);
    }
    return clean;
  } catch {
    return null;
  }
}
