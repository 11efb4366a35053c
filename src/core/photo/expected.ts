import type { Piece } from '../model/piece.ts';
import type { Expected } from './coarseLoom.ts';

/** What the plan says the picture should show. */
export function expectedOf(piece: Piece): Expected {
  const { loom, warp, cloth } = piece;
  return {
    pitch: loom.notchPitch,
    notches: loom.notches,
    openingWidth: loom.openingWidth,
    openingHeight: loom.openingHeight,
    bar: loom.bar,
    depth: loom.depth,
    ends: warp.ends,
    firstNotch: warp.firstNotch,
    stringDiameter: warp.stringDiameter,
    stringsPerEnd: warp.stringsPerEnd,
    base: cloth.baseAboveBottomBar,
  };
}
