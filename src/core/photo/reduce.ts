import type { Photo } from './raster.ts';

/** A photograph shrunk by a whole factor, its three channels apart (0–255, sRGB-coded). */
export interface ColourRaster {
  readonly width: number;
  readonly height: number;
  /** Red, green, blue, each row-major. */
  readonly channels: readonly [Float32Array, Float32Array, Float32Array];
}

/**
 * Mean of factor × factor squares. Pixel centres are whole numbers, so small pixel (x, y) lies at
 * (x factor + (factor − 1) / 2, …) of the large picture; {@link enlargedCoordinate} does the sum.
 */
export function reducePhoto(photo: Photo, factor: number): ColourRaster {
  const width = Math.floor(photo.width / factor);
  const height = Math.floor(photo.height / factor);
  const channels: [Float32Array, Float32Array, Float32Array] = [
    new Float32Array(width * height),
    new Float32Array(width * height),
    new Float32Array(width * height),
  ];
  const [red, green, blue] = channels;
  const share = 1 / (factor * factor);
  const { rgb } = photo;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      let r = 0;
      let g = 0;
      let b = 0;
      for (let dy = 0; dy < factor; dy++) {
        let at = ((y * factor + dy) * photo.width + x * factor) * 3;
        for (let dx = 0; dx < factor; dx++, at += 3) {
          r += rgb[at]!;
          g += rgb[at + 1]!;
          b += rgb[at + 2]!;
        }
      }
      const to = y * width + x;
      red[to] = r * share;
      green[to] = g * share;
      blue[to] = b * share;
    }
  }
  return { width, height, channels };
}

/** Where a coordinate of a picture reduced by `factor` lies in the large picture. */
export const enlargedCoordinate = (value: number, factor: number): number => value * factor + (factor - 1) / 2;

/** The other way round. */
export const reducedCoordinate = (value: number, factor: number): number => (value - (factor - 1) / 2) / factor;

/** The whole factor that brings the long side to `longest` or just below. */
export const reductionFor = (photo: Photo, longest: number): number =>
  Math.max(1, Math.ceil(Math.max(photo.width, photo.height) / longest));

/**
 * The factor for a first look at a loom: small for speed, yet with strings `pitch` mm apart at least nine pixels
 * apart when a loom of `across` mm fills three quarters of the picture's long side.
 */
export function firstLookReduction(photo: Photo, across: number, pitch: number): number {
  const longest = Math.max(photo.width, photo.height);
  const pitchPx = (0.75 * longest * pitch) / across;
  return Math.max(1, Math.min(Math.floor(pitchPx / 9), Math.floor(longest / 1000)), Math.ceil(longest / 1600));
}
