import type { Piece } from '../model/piece.ts';

/** What stands on the loom already: so many passes, so high as measured, mm. */
export interface MeasuredCloth {
  readonly passes: number;
  readonly height: number;
}

/** The grid of ends and passes a piece is woven on. */
export interface ClothGrid {
  readonly ends: number;
  readonly passes: number;
  /** Distance between neighbouring ends, mm: ends × pitch is the width in every sum. */
  readonly pitch: number;
  /** Height of a pass above what has been measured; of every pass when nothing has. */
  readonly passHeight: number;
  /** Rows of the header at the foot and of the footer at the head; together never more than all the passes. */
  readonly header: number;
  readonly footer: number;
  readonly measured: MeasuredCloth | null;
}

/** An odd number of passes is allowed: only turns come in twos. */
export function clothGridOf(piece: Piece, measured: MeasuredCloth | null = null): ClothGrid {
  const { cloth } = piece;
  const passes =
    measured === null
      ? Math.round(cloth.height / cloth.passHeight)
      : measured.passes + Math.max(0, Math.round((cloth.height - measured.height) / cloth.passHeight));
  const whole = Math.max(1, passes);
  const header = Math.min(whole, cloth.headerPasses);
  return {
    ends: piece.warp.ends,
    passes: whole,
    pitch: piece.loom.notchPitch,
    passHeight: cloth.passHeight,
    header,
    footer: Math.min(whole - header, cloth.footerPasses),
    measured,
  };
}

/** Distance in x from the middle of the cloth to the middle of an end, mm. */
export const endX = (grid: Pick<ClothGrid, 'ends' | 'pitch'>, end: number): number =>
  (end - (grid.ends - 1) / 2) * grid.pitch;

/** How high the cloth stands when so many passes are woven, mm. */
export function heightOfPasses(grid: Pick<ClothGrid, 'passHeight' | 'measured'>, passes: number): number {
  const { measured } = grid;
  if (measured === null) return passes * grid.passHeight;
  return passes <= measured.passes
    ? (passes * measured.height) / measured.passes
    : measured.height + (passes - measured.passes) * grid.passHeight;
}

/** How many passes, with parts of one, stand at a height, mm: what `heightOfPasses` undoes. */
export function passesAtHeight(grid: Pick<ClothGrid, 'passHeight' | 'measured'>, height: number): number {
  const { measured } = grid;
  if (measured === null) return height / grid.passHeight;
  return height <= measured.height
    ? (height * measured.passes) / measured.height
    : measured.passes + (height - measured.height) / grid.passHeight;
}

/** Height of the middle of a pass above the base of the cloth, mm. */
export const passY = (grid: Pick<ClothGrid, 'passHeight' | 'measured'>, pass: number): number =>
  grid.measured === null
    ? (pass + 0.5) * grid.passHeight
    : (heightOfPasses(grid, pass) + heightOfPasses(grid, pass + 1)) / 2;
