import type { Piece } from '../model/piece.ts';

/** The grid of ends and passes a piece is woven on. */
export interface ClothGrid {
  readonly ends: number;
  readonly passes: number;
  /** Distance between neighbouring ends, mm: ends × pitch is the width in every sum. */
  readonly pitch: number;
  readonly passHeight: number;
  /** Rows of the header at the foot and of the footer at the head; together never more than all the passes. */
  readonly header: number;
  readonly footer: number;
}

/** An odd number of passes is allowed: only turns come in twos. */
export function clothGridOf(piece: Piece): ClothGrid {
  const { cloth } = piece;
  const passes = Math.max(1, Math.round(cloth.height / cloth.passHeight));
  const header = Math.min(passes, cloth.headerPasses);
  return {
    ends: piece.warp.ends,
    passes,
    pitch: piece.loom.notchPitch,
    passHeight: cloth.passHeight,
    header,
    footer: Math.min(passes - header, cloth.footerPasses),
  };
}

/** Distance in x from the middle of the cloth to the middle of an end, mm. */
export const endX = (grid: Pick<ClothGrid, 'ends' | 'pitch'>, end: number): number =>
  (end - (grid.ends - 1) / 2) * grid.pitch;

/** Height of the middle of a pass above the base of the cloth, mm. */
export const passY = (grid: Pick<ClothGrid, 'passHeight'>, pass: number): number => (pass + 0.5) * grid.passHeight;
