/** What stays in a photograph's metadata when places are taken out. */
export interface KeptMetadata {
  /** EXIF turn, 1 to 8. */
  readonly orientation: number;
}

/** A TIFF block (EXIF without its "Exif\0\0" head) that says the turn and nothing else. */
export function minimalExif({ orientation }: KeptMetadata): Uint8Array {
  const block = new Uint8Array(26);
  const view = new DataView(block.buffer);
  view.setUint32(0, 0x4d4d002a); // "MM", 42: big-endian TIFF
  view.setUint32(4, 8); // the first directory follows at once
  view.setUint16(8, 1); // one entry
  view.setUint16(10, 0x0112); // orientation
  view.setUint16(12, 3); // SHORT
  view.setUint32(14, 1);
  view.setUint16(18, orientation);
  view.setUint32(22, 0); // no further directory
  return block;
}
