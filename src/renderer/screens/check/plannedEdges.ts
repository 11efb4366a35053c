import type { LoomReading } from '../../../core/model/check.ts';
import type { Piece } from '../../../core/model/piece.ts';

/** Where the selvedges should be, cloth frame, mm. */
export interface PlannedEdges {
  readonly left: number;
  readonly right: number;
}

/** Heights, mm, over which the cloth itself shows how far it overhangs its outer ends. */
const LOWEST = 10;

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((one, other) => one - other);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
};

/**
 * The planned selvedge: the outer end's planned x and the overhang. Until the cloth's own lowest 10 mm show the
 * overhang, it is half the end's width and one weft thickness.
 */
export function plannedEdges(piece: Piece, reading: LoomReading | null): PlannedEdges {
  const outer = ((piece.warp.ends - 1) / 2) * piece.loom.notchPitch;
  const shown = (reading?.selvedge ?? [])
    .filter((row) => row.y <= LOWEST)
    .flatMap((row) => [
      ...(row.left ? [-outer - row.left.value] : []),
      ...(row.right ? [row.right.value - outer] : []),
    ]);
  const overhang =
    shown.length >= 4
      ? median(shown)
      : (piece.warp.stringDiameter * piece.warp.stringsPerEnd) / 2 + piece.cloth.passHeight;
  return { left: -outer - overhang, right: outer + overhang };
}
