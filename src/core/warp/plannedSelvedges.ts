import type { SelvedgeRow } from '../model/check.ts';
import type { Piece } from '../model/piece.ts';

import { weftDiameter } from '../yarn/yarnDiameter.ts';
import { endWidth } from './endWidth.ts';

/** Where the selvedges should lie, cloth mm. */
export interface PlannedSelvedges {
  readonly left: number;
  readonly right: number;
}

/** The cloth's own lowest part, mm: it shows how far the weft really reaches past the outer ends. */
const LOWEST_MM = 10;

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((one, other) => one - other);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
};

/**
 * Where the selvedges should lie: the outer ends' planned places, and past them what the weft overhangs. That is half
 * an end's width and one weft thickness until the cloth's own lowest 10 mm show it; a piece that started narrow isn't
 * then blamed for drawing in.
 * @param rows measured selvedges; none before there is a check.
 */
export function plannedSelvedges(piece: Piece, rows: readonly SelvedgeRow[] = []): PlannedSelvedges {
  const outer = ((piece.warp.ends - 1) / 2) * piece.loom.notchPitch;
  const ground = piece.yarns.find((yarn) => yarn.id === piece.cloth.ground);
  // Without a yarn to go by, neighbouring passes nest about half their thickness into one another.
  const weft = (ground && weftDiameter(ground)?.diameter) ?? 2 * piece.cloth.passHeight;
  const low = rows.filter((row) => row.y >= 0 && row.y <= LOWEST_MM);
  const seen = low.flatMap((row) => [
    ...(row.left === null ? [] : [-outer - row.left.value]),
    ...(row.right === null ? [] : [row.right.value - outer]),
  ]);
  const overhang = seen.length >= 2 ? median(seen) : endWidth(piece.warp) / 2 + weft;
  return { left: -outer - overhang, right: outer + overhang };
}
