import type { ReferenceReading } from '../../../core/model/check.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { toLoom, toPhoto } from '../../../core/photo/loomPose.ts';

export interface PlainPoint {
  readonly x: number;
  readonly y: number;
}

/** Where the cloth frame's origin lies in the loom frame, mm: the middle of the used notches, and the base line. */
export function clothOrigin(piece: Pick<Piece, 'loom' | 'warp' | 'cloth'>): PlainPoint {
  const { notchPitch, notches } = piece.loom;
  const { firstNotch, ends } = piece.warp;
  return {
    x: (firstNotch + (ends - 1) / 2 - (notches - 1) / 2) * notchPitch,
    y: piece.cloth.baseAboveBottomBar,
  };
}

/** Cloth millimetres to pixels of the photograph as displayed and back, by the pose a reading was tied down with. */
export function clothToPhoto(piece: Pick<Piece, 'loom' | 'warp' | 'cloth'>, reference: ReferenceReading) {
  const origin = clothOrigin(piece);
  const pose = {
    homography: Float64Array.from(reference.homography),
    lens: {
      centreX: reference.photoWidth / 2,
      centreY: reference.photoHeight / 2,
      halfDiagonal: Math.hypot(reference.photoWidth, reference.photoHeight) / 2,
      k1: reference.lensK1,
      k2: reference.lensK2,
    },
  };
  return {
    toPhoto: (x: number, y: number): PlainPoint => toPhoto(pose, x + origin.x, y + origin.y),
    toCloth: (px: number, py: number): PlainPoint => {
      const loom = toLoom(pose, px, py);
      return { x: loom.x - origin.x, y: loom.y - origin.y };
    },
  };
}
