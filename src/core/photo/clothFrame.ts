import type { Piece } from '../model/piece.ts';
import type { LoomPose } from './loomPose.ts';

/** What the piece says that reading the cloth needs, in plain millimetres, with the way from cloth to loom. */
export interface ClothFrame {
  readonly ends: number;
  readonly pitch: number;
  readonly planPass: number;
  readonly planHeight: number;
  readonly headerPasses: number;
  /** Half the breadth of one bare end: one string, or two side by side. */
  readonly endHalf: number;
  readonly stringsPerEnd: 1 | 2;
  /** Loom y of the cloth's base line. */
  readonly baseY: number;
  /** Loom x of the mean of the used notches. */
  readonly centreX: number;
  readonly openingHeight: number;
  readonly openingWidth: number;
  /** Millimetres a pixel spans, about the middle of the cloth. */
  readonly mmPerPx: number;
  /** Planned x of an end, cloth frame. */
  readonly endX: (end: number) => number;
}

export function clothFrame(piece: Piece, pose: LoomPose): ClothFrame {
  const { loom, warp, cloth } = piece;
  const centreX = (-(loom.notches - 1) / 2 + warp.firstNotch + (warp.ends - 1) / 2) * loom.notchPitch;
  return {
    ends: warp.ends,
    pitch: loom.notchPitch,
    planPass: cloth.passHeight,
    planHeight: cloth.height,
    headerPasses: cloth.headerPasses,
    // Two strings through one notch lie side by side, hardly apart.
    endHalf: warp.stringsPerEnd === 2 ? warp.stringDiameter * 1.05 : warp.stringDiameter / 2,
    stringsPerEnd: warp.stringsPerEnd,
    baseY: cloth.baseAboveBottomBar,
    centreX,
    openingHeight: loom.openingHeight,
    openingWidth: loom.openingWidth,
    mmPerPx: pose.reference.mmPerPx,
    endX: (end) => (end - (warp.ends - 1) / 2) * loom.notchPitch,
  };
}
