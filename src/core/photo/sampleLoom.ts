import type { LoomPose } from './loomPose.ts';
import type { Photo } from './raster.ts';

/**
 * Reads colours of a photograph at places given in loom millimetres, by bilinear interpolation. A colour is three
 * numbers on the scale of 8-bit sRGB: lightness (r + g + b) / 3, red against green r − g, yellow against blue
 * (r + g) / 2 − b. As everywhere in this folder, the middle of the first pixel is the place (0, 0).
 */
export interface LoomSampler {
  readonly photo: Photo;
  readonly pose: LoomPose;
  /**
   * Writes the colour at loom (x, y) into `out[at..at + 2]`.
   * @returns false, with zeros written, where the place lies outside the picture.
   */
  readonly read: (x: number, y: number, out: Float32Array, at: number) => boolean;
}

export function loomSampler(photo: Photo, pose: LoomPose): LoomSampler {
  const [h0, h1, h2, h3, h4, h5, h6, h7, h8] = pose.homography as unknown as readonly [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const { centreX, centreY, halfDiagonal, k1, k2 } = pose.lens;
  const perSquare = 1 / (halfDiagonal * halfDiagonal);
  const { width, height, rgb } = photo;
  const stride = width * 3;
  const read = (x: number, y: number, out: Float32Array, at: number): boolean => {
    const w = h6 * x + h7 * y + h8;
    const dx = (h0 * x + h1 * y + h2) / w - centreX;
    const dy = (h3 * x + h4 * y + h5) / w - centreY;
    const r2 = (dx * dx + dy * dy) * perSquare;
    const stretch = 1 + r2 * (k1 + k2 * r2);
    const px = centreX + dx * stretch;
    const py = centreY + dy * stretch;
    const column = Math.floor(px);
    const row = Math.floor(py);
    if (!(column >= 0 && row >= 0 && column + 1 < width && row + 1 < height)) {
      out[at] = 0;
      out[at + 1] = 0;
      out[at + 2] = 0;
      return false;
    }
    const fx = px - column;
    const fy = py - row;
    const a = (1 - fx) * (1 - fy);
    const b = fx * (1 - fy);
    const c = (1 - fx) * fy;
    const d = fx * fy;
    const p = row * stride + column * 3;
    const q = p + stride;
    const red = a * rgb[p]! + b * rgb[p + 3]! + c * rgb[q]! + d * rgb[q + 3]!;
    const green = a * rgb[p + 1]! + b * rgb[p + 4]! + c * rgb[q + 1]! + d * rgb[q + 4]!;
    const blue = a * rgb[p + 2]! + b * rgb[p + 5]! + c * rgb[q + 2]! + d * rgb[q + 5]!;
    out[at] = (red + green + blue) / 3;
    out[at + 1] = red - green;
    out[at + 2] = (red + green) / 2 - blue;
    return true;
  };
  return { photo, pose, read };
}
