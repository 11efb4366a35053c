import type { ReferenceReading } from '../../core/model/check.ts';
import type { Piece } from '../../core/model/piece.ts';
import { toPhoto } from '../../core/photo/loomPose.ts';
import type { Photo } from '../../core/photo/raster.ts';
import { remapPhoto } from './cvPort.ts';

/** A rectangle of the cloth frame, mm, and how finely it is sampled. */
export interface FrontOnRectangle {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
  readonly pxPerMm: number;
}

export const MAX_FRONT_ON_PIXELS = 24_000_000;

/** Size in px of a front-on picture, or null when the rectangle is empty or too large. */
export function frontOnSize(rectangle: FrontOnRectangle): { readonly width: number; readonly height: number } | null {
  const width = Math.round((rectangle.right - rectangle.left) * rectangle.pxPerMm);
  const height = Math.round((rectangle.top - rectangle.bottom) * rectangle.pxPerMm);
  return width >= 1 && height >= 1 && width <= 16_384 && height <= 16_384 && width * height <= MAX_FRONT_ON_PIXELS
    ? { width, height }
    : null;
}

/** The loom seen front-on: the lens straightened, the view squared, one scale everywhere. */
export function frontOn(photo: Photo, piece: Piece, reference: ReferenceReading, rectangle: FrontOnRectangle): Photo {
  const size = frontOnSize(rectangle);
  if (size === null) throw new RangeError('front-on rectangle');
  const { width, height } = size;
  // The cloth's middle is the mean of the used notches; the loom's is the middle of all of them.
  const { warp, loom, cloth } = piece;
  const clothX = (warp.firstNotch + (warp.ends - 1) / 2 - (loom.notches - 1) / 2) * loom.notchPitch;
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
  const mapX = new Float32Array(width * height);
  const mapY = new Float32Array(width * height);
  for (let row = 0; row < height; row++) {
    const y = rectangle.top - (row + 0.5) / rectangle.pxPerMm + cloth.baseAboveBottomBar;
    for (let column = 0; column < width; column++) {
      const x = rectangle.left + (column + 0.5) / rectangle.pxPerMm + clothX;
      const from = toPhoto(pose, x, y);
      mapX[row * width + column] = from.x;
      mapY[row * width + column] = from.y;
    }
  }
  return remapPhoto(photo, mapX, mapY, width, height);
}
