import type { Piece } from '../model/piece.ts';
import { type Mm, mm } from '../model/units.ts';
import { clothWidth } from '../warp/endWidth.ts';

/** A row at each end of the cloth; each takes two strands, each about twice the width of the cloth. Common practice, no source. */
const rows = 2;
const strands = 2;
const widthsPerStrand = 2;

export interface Twining {
  readonly rows: number;
  readonly strands: number;
  /** All strands of all rows with both tails of each, mm. */
  readonly length: Mm;
}

/**
 * One row under the header and one above the last pass, which is the header's order reversed. Without the second the
 * top slides when the tension goes.
 */
export function twiningOf(piece: Piece): Twining {
  const strand = widthsPerStrand * clothWidth(piece.loom, piece.warp) + 2 * piece.making.tail;
  return { rows, strands, length: mm(rows * strands * strand) };
}
