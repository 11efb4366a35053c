import type { Raster } from './raster.ts';

/** Sampled Gaussian of unit sum, out to 3.5 sigma. */
export function gaussianKernel(sigma: number): Float32Array {
  const radius = Math.max(1, Math.ceil(3.5 * sigma));
  const kernel = new Float32Array(2 * radius + 1);
  let sum = 0;
  for (let i = -radius; i <= radius; i++) {
    kernel[i + radius] = Math.exp((-i * i) / (2 * sigma * sigma));
    sum += kernel[i + radius]!;
  }
  return kernel.map((value) => value / sum);
}

/** Second derivative of the Gaussian with its sign turned and times sigma²: answers 1/e-ish to a bright ridge, 0 to a flat or sloping ground. */
export function ridgeKernel(sigma: number): Float32Array {
  const radius = Math.max(2, Math.ceil(4 * sigma));
  const kernel = new Float32Array(2 * radius + 1);
  let mean = 0;
  for (let i = -radius; i <= radius; i++) {
    const u = (i * i) / (sigma * sigma);
    kernel[i + radius] = ((1 - u) * Math.exp(-u / 2)) / (sigma * Math.sqrt(2 * Math.PI));
    mean += kernel[i + radius]! / kernel.length;
  }
  return kernel.map((value) => value - mean);
}

/** Derivative of the Gaussian: grey levels per pixel. */
export function slopeKernel(sigma: number): Float32Array {
  const radius = Math.max(1, Math.ceil(3.5 * sigma));
  const kernel = new Float32Array(2 * radius + 1);
  let moment = 0;
  for (let i = -radius; i <= radius; i++) {
    kernel[i + radius] = i * Math.exp((-i * i) / (2 * sigma * sigma));
    moment += i * kernel[i + radius]!;
  }
  return kernel.map((value) => value / moment);
}

/** Correlates every row with a kernel of odd length; the border pixel is repeated outward. */
export function alongRows(raster: Raster, kernel: Float32Array): Raster {
  const { width, height, data } = raster;
  const taps = kernel.length;
  const radius = (taps - 1) / 2;
  const out = new Float32Array(data.length);
  // Four places at a time: their sums don't wait for each other.
  const padded = new Float32Array(width + 2 * radius + 3);
  for (let y = 0; y < height; y++) {
    const row = y * width;
    padded.fill(data[row]!, 0, radius);
    padded.set(data.subarray(row, row + width), radius);
    padded.fill(data[row + width - 1]!, radius + width);
    for (let x = 0; x < width; x += 4) {
      let a = 0;
      let b = 0;
      let c = 0;
      let d = 0;
      for (let k = 0, at = x; k < taps; k++, at++) {
        const weight = kernel[k]!;
        a += weight * padded[at]!;
        b += weight * padded[at + 1]!;
        c += weight * padded[at + 2]!;
        d += weight * padded[at + 3]!;
      }
      const to = row + x;
      out[to] = a;
      if (x + 1 < width) out[to + 1] = b;
      if (x + 2 < width) out[to + 2] = c;
      if (x + 3 < width) out[to + 3] = d;
    }
  }
  return { width, height, data: out };
}

/** Correlates every column with a kernel of odd length; the border pixel is repeated outward. */
export function alongColumns(raster: Raster, kernel: Float32Array): Raster {
  const { width, height, data } = raster;
  const taps = kernel.length;
  const radius = (taps - 1) / 2;
  const out = new Float32Array(data.length);
  const sums = new Float64Array(width);
  const rowOf = (y: number) => Math.min(height - 1, Math.max(0, y)) * width;
  for (let y = 0; y < height; y++) {
    const first = kernel[0]!;
    const start = rowOf(y - radius);
    for (let x = 0; x < width; x++) sums[x] = first * data[start + x]!;
    // The length is odd: the other rows go in pairs, so that the sums are fetched and put back half as often.
    for (let k = 1; k < taps; k += 2) {
      const upper = kernel[k]!;
      const lower = kernel[k + 1]!;
      const p = rowOf(y + k - radius);
      const q = rowOf(y + k + 1 - radius);
      for (let x = 0; x < width; x++) sums[x]! += upper * data[p + x]! + lower * data[q + x]!;
    }
    out.set(sums, y * width);
  }
  return { width, height, data: out };
}

/** Gaussian blur. */
export const blurred = (raster: Raster, sigma: number): Raster => {
  const kernel = gaussianKernel(sigma);
  return alongColumns(alongRows(raster, kernel), kernel);
};
