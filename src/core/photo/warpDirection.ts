import { blurred } from './gaussian.ts';
import type { Raster } from './raster.ts';

/**
 * Directions in which long fine lines may run, strongest first: peaks of the histogram of gradient direction. Strings,
 * bars, a striped cloth or a plank table all show; the comb decides between them later.
 * @returns radians from the x axis towards y (down), 0 ≤ angle < π.
 */
export function lineDirections(raster: Raster, most: number): number[] {
  const smooth = blurred(raster, 1);
  const { width, height, data } = smooth;
  const bins = 180;
  const histogram = new Float64Array(bins);
  for (let y = 1; y < height - 1; y += 2) {
    for (let x = 1; x < width - 1; x += 2) {
      const at = y * width + x;
      const gx = data[at + 1]! - data[at - 1]!;
      const gy = data[at + width]! - data[at - width]!;
      const strength = Math.hypot(gx, gy);
      if (strength < 3) continue;
      // The line runs across its gradient.
      const angle = Math.atan2(gx, -gy);
      const bin = (((angle / Math.PI) * bins) % bins) + bins;
      histogram[Math.floor(bin) % bins]! += Math.min(strength, 40);
    }
  }
  const rounded = new Float64Array(bins);
  for (let k = 0; k < bins; k++) {
    for (let d = -4; d <= 4; d++) rounded[k]! += histogram[(k + d + bins) % bins]! * (5 - Math.abs(d));
  }
  const found: number[] = [];
  const order = [...rounded.keys()].sort((a, b) => rounded[b]! - rounded[a]!);
  for (const k of order) {
    if (found.length >= most) break;
    const apart = found.every((other) => {
      const distance = Math.abs(other - k);
      return Math.min(distance, bins - distance) >= 9;
    });
    const isPeak = rounded[k]! >= rounded[(k + 1) % bins]! && rounded[k]! >= rounded[(k + bins - 1) % bins]!;
    if (apart && isPeak) found.push(k);
  }
  return found.map((k) => ((k + 0.5) * Math.PI) / bins);
}
