import type { Piece } from '../model/piece.ts';
import { type Mm, mm } from '../model/units.ts';
import { clothWidth } from '../warp/endWidth.ts';

/** Twining takes two strands, each about twice the width of the cloth. Common practice, no source. */
const strands = 2;
const widthsPerStrand = 2;

export interface Twining {
  readonly rows: number;
  readonly strands: number;
  /** All strands of all rows with both tails of each, mm. */
  readonly length: Mm;
}

/** One row under the header, and one above the footer where there is a footer: the header's order reversed. */
export function twiningOf(piece: Piece): Twining {
  const rows = piece.cloth.footerPasses > 0 ? 2 : 1;
  const strand = widthsPerStrand * clothWidth(piece.loom, piece.warp) + 2 * piece.making.tail;
  return { rows, strands, length: mm(rows * strands * strand) };
}
