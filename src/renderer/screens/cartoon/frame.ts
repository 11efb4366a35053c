import { clothBox } from '../../../core/cartoon/snap.ts';
import type { Piece } from '../../../core/model/piece.ts';
import type { Look } from './cartoonStore.ts';

/** Room for the rulers round the drawing, px. */
export const RULER = { left: 66, right: 52, bottom: 44, top: 4 };

/** Cloth mm to and from the pixels of the drawing. */
export interface Frame {
  readonly look: Look;
  readonly x: (mm: number) => number;
  readonly y: (mm: number) => number;
  readonly width: number;
  readonly height: number;
}

/** The whole cloth with a little air, for a window of this size. */
export function wholeLook(piece: Pick<Piece, 'cloth' | 'warp' | 'loom'>, width: number, height: number): Look {
  const box = clothBox(piece);
  const across = (width - RULER.left - RULER.right) / (box.right - box.left);
  const up = (height - RULER.top - RULER.bottom) / (box.top * 1.02);
  return { x: 0, y: box.top / 2, pxPerMm: Math.max(0.2, Math.min(across, up)) };
}

export function frameFor(look: Look, width: number, height: number): Frame {
  const middleX = RULER.left + (width - RULER.left - RULER.right) / 2;
  const middleY = RULER.top + (height - RULER.top - RULER.bottom) / 2;
  return {
    look,
    width,
    height,
    x: (mm) => middleX + (mm - look.x) * look.pxPerMm,
    y: (mm) => middleY - (mm - look.y) * look.pxPerMm,
  };
}
