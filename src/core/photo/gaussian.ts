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
  const radius = (kernel.length - 1) / 2;
  const out = new Float32Array(data.length);
  const padded = new Float32Array(width + 2 * radius);
  for (let y = 0; y < height; y++) {
    const row = y * width;
    padded.fill(data[row]!, 0, radius);
    padded.set(data.subarray(row, row + width), radius);
    padded.fill(data[row + width - 1]!, radius + width);
    for (let x = 0; x < width; x++) {
      let sum = 0;
      for (let k = 0; k < kernel.length; k++) sum += kernel[k]! * padded[x + k]!;
      out[row + x] = sum;
    }
  }
  return { width, height, data: out };
}

/** Correlates every column with a kernel of odd length; the border pixel is repeated outward. */
export function alongColumns(raster: Raster, kernel: Float32Array): Raster {
  const { width, height, data } = raster;
  const radius = (kernel.length - 1) / 2;
  const out = new Float32Array(data.length);
  for (let y = 0; y < height; y++) {
    const to = y * width;
    for (let k = 0; k < kernel.length; k++) {
      const weight = kernel[k]!;
      const from = Math.min(height - 1, Math.max(0, y + k - radius)) * width;
      for (let x = 0; x < width; x++) out[to + x]! += weight * data[from + x]!;
    }
  }
  return { width, height, data: out };
}

/** Gaussian blur. */
export const blurred = (raster: Raster, sigma: number): Raster => {
  const kernel = gaussianKernel(sigma);
  return alongColumns(alongRows(raster, kernel), kernel);
};
