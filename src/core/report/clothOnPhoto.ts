import type { ReferenceReading } from '../model/check.ts';
import type { Piece } from '../model/piece.ts';
import { toPhoto } from '../photo/loomPose.ts';

/** Cloth mm to pixels of the photograph as displayed, origin at its top left. */
export type ClothToPhoto = (x: number, y: number) => { readonly x: number; readonly y: number };

/** Where places of the cloth lie on a measured photograph, by the reference kept with the check. */
export function clothOnPhoto(piece: Piece, reference: ReferenceReading): ClothToPhoto {
  const { loom, warp, cloth } = piece;
  const middle = (warp.firstNotch + (warp.ends - 1) / 2 - (loom.notches - 1) / 2) * loom.notchPitch;
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
  return (x, y) => toPhoto(pose, x + middle, y + cloth.baseAboveBottomBar);
}
