import type { ColourRaster } from './reduce.ts';

/** Bilinear colour at a place; outside, the nearest border pixel. Writes red, green, blue into `out` from `at`. */
export function sampleColour(
  picture: ColourRaster,
  x: number,
  y: number,
  out: Float32Array | Float64Array,
  at: number,
): void {
  const { width, height } = picture;
  const sx = Math.min(width - 1.001, Math.max(0, x));
  const sy = Math.min(height - 1.001, Math.max(0, y));
  const x0 = sx | 0;
  const y0 = sy | 0;
  const fx = sx - x0;
  const fy = sy - y0;
  const from = y0 * width + x0;
  for (let c = 0; c < 3; c++) {
    const data = picture.channels[c]!;
    const above = data[from]! + fx * (data[from + 1]! - data[from]!);
    const below = data[from + width]! + fx * (data[from + width + 1]! - data[from + width]!);
    out[at + c] = above + fy * (below - above);
  }
}

export const insidePicture = (picture: { width: number; height: number }, x: number, y: number): boolean =>
  x >= 0 && y >= 0 && x <= picture.width - 1 && y <= picture.height - 1;
