import { usualCamera } from '../src/core/photo/coarseCamera.ts';
import type { LoomPose } from '../src/core/photo/loomPose.ts';
import type { Photo, Raster } from '../src/core/photo/raster.ts';
import { loomSampler } from '../src/core/photo/sampleLoom.ts';

export type Pair = readonly [x: number, y: number];

/** The 3 × 3 that takes four places in mm to four places in px, by elimination on its eight unknowns. */
export function homographyOf(mm: readonly Pair[], px: readonly Pair[]): Float64Array {
  const rows: number[][] = [];
  for (const [k, [x, y]] of mm.entries()) {
    const [u, v] = px[k]!;
    rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y, u], [0, 0, 0, x, y, 1, -v * x, -v * y, v]);
  }
  for (let column = 0; column < 8; column++) {
    let best = column;
    for (let row = column + 1; row < 8; row++)
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[best]![column]!)) best = row;
    [rows[column], rows[best]] = [rows[best]!, rows[column]!];
    for (let row = 0; row < 8; row++) {
      if (row === column) continue;
      const share = rows[row]![column]! / rows[column]![column]!;
      for (let k = column; k < 9; k++) rows[row]![k]! -= share * rows[column]![k]!;
    }
  }
  return Float64Array.from([...rows.map((row, k) => row[8]! / row[k]!), 1]);
}

/** A pose from four points alone: no lens, and a guess of half a pixel for each point. */
export function fourPointPose(photo: Photo, mm: readonly Pair[], px: readonly Pair[]): LoomPose {
  const homography = homographyOf(mm, px);
  const mmPerPx =
    Math.hypot(mm[1]![0] - mm[0]![0], mm[1]![1] - mm[0]![1]) / Math.hypot(px[1]![0] - px[0]![0], px[1]![1] - px[0]![1]);
  return {
    homography,
    lens: {
      centreX: photo.width / 2,
      centreY: photo.height / 2,
      halfDiagonal: Math.hypot(photo.width, photo.height) / 2,
      k1: 0,
      k2: 0,
    },
    focal: Math.exp(usualCamera(photo).logFocal),
    reference: {
      method: 'points',
      parts: ['four points'],
      mmPerPx,
      residualMm: 0,
      lensK1: 0,
      lensK2: 0,
      lens: null,
      homography: [...homography],
      photoWidth: photo.width,
      photoHeight: photo.height,
      scaleSigma: 0.002,
      baseSigmaMm: 0.5 * mmPerPx,
    },
    sharedSigma: () => ({ x: 0.5 * mmPerPx, y: 0.5 * mmPerPx }),
  };
}

/** Lightness of a band of the loom seen straight on, `step` mm a pixel; row 0 is the highest. */
export function bandSeen(
  photo: Photo,
  pose: LoomPose,
  left: number,
  right: number,
  low: number,
  high: number,
  step: number,
): Raster {
  const sampler = loomSampler(photo, pose);
  const width = Math.round((right - left) / step);
  const height = Math.round((high - low) / step);
  const data = new Float32Array(width * height);
  const colour = new Float32Array(3);
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      sampler.read(left + (column + 0.5) * step, high - (row + 0.5) * step, colour, 0);
      data[row * width + column] = colour[0]!;
    }
  return { width, height, data };
}
