import { blendChannels, brightness } from './blend.ts';
import type { Expected } from './expected.ts';
import { alongColumns, alongRows, gaussianKernel } from './gaussian.ts';
import type { Photo, Raster } from './raster.ts';
import { reducedCoordinate, reducePhoto } from './reduce.ts';

/** Pixels of a loom seen front-on: the middle of pixel (0, 0) lies at (left, top), loom mm; y falls with the row. */
export interface FlatGrid {
  readonly left: number;
  readonly top: number;
  readonly pxPerMm: number;
  readonly width: number;
  readonly height: number;
}

/** The loom with its frame seen front-on, and which of its pixels lie in the photograph. */
export interface FlatLoom {
  readonly grid: FlatGrid;
  readonly light: Raster;
  readonly seen: Uint8Array;
}

/** Largest number of pixels, so that a fine photograph of a large loom stays quick. */
const MOST_PIXELS = 2_200_000;
/** Finest scale: grain and floats show, px per mm. */
const FINEST = 4;

/** The grid of a loom with its frame. @param pxPerMm as finely as the coarser of two photographs shows it. */
export function flatGrid(expected: Expected, pxPerMm: number): FlatGrid {
  const across = expected.openingWidth + 2 * expected.bar;
  const up = expected.openingHeight + 2 * expected.bar;
  const scale = Math.min(FINEST, pxPerMm, Math.sqrt(MOST_PIXELS / (across * up)));
  return {
    left: -across / 2,
    top: expected.openingHeight + expected.bar,
    pxPerMm: scale,
    width: Math.floor(across * scale),
    height: Math.floor(up * scale),
  };
}

/** Brightness of a photograph, reduced to about the grid's scale. */
export interface LightPicture {
  readonly light: Raster;
  readonly factor: number;
}

export function lightPicture(photo: Photo, photoPxPerMm: number, pxPerMm: number): LightPicture {
  const factor = Math.max(1, Math.floor(photoPxPerMm / pxPerMm + 0.2));
  return { light: blendChannels(reducePhoto(photo, factor), brightness), factor };
}

/** @param toPhoto where a place of the loom is seen, photo px, on the face that is seen there. */
export function flattenLoom(
  { light, factor }: LightPicture,
  toPhoto: (x: number, y: number) => { x: number; y: number },
  grid: FlatGrid,
): FlatLoom {
  const { width, height, pxPerMm, left, top } = grid;
  const out = new Float32Array(width * height);
  const seen = new Uint8Array(width * height);
  const { width: across, data } = light;
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const place = toPhoto(left + column / pxPerMm, top - row / pxPerMm);
      const px = reducedCoordinate(place.x, factor);
      const py = reducedCoordinate(place.y, factor);
      if (!(px >= 0 && py >= 0 && px < across - 1 && py < light.height - 1)) continue;
      const x0 = px | 0;
      const y0 = py | 0;
      const at = y0 * across + x0;
      const upper = data[at]! + (px - x0) * (data[at + 1]! - data[at]!);
      const lower = data[at + across]! + (px - x0) * (data[at + across + 1]! - data[at + across]!);
      out[row * width + column] = upper + (py - y0) * (lower - upper);
      seen[row * width + column] = 1;
    }
  }
  return { grid, light: { width, height, data: out }, seen };
}

const blurred = (raster: Raster, sigma: number): Raster =>
  alongColumns(alongRows(raster, gaussianKernel(sigma)), gaussianKernel(sigma));

/**
 * Two running means one after the other along rows and columns, of the same spread as a Gaussian: as quick for wide
 * surroundings as for narrow ones. What lies outside counts as 0.
 */
function surroundings({ width, height, data }: Raster, sigma: number): Float32Array {
  // A running mean over 2 r + 1 has a variance of ((2 r + 1)² − 1) / 12; two of them have twice that.
  const radius = Math.max(1, Math.round((Math.sqrt(6 * sigma * sigma + 1) - 1) / 2));
  const share = 1 / (2 * radius + 1);
  const line = (from: Float32Array, to: Float32Array, count: number, start: number, step: number): void => {
    let sum = 0;
    for (let k = 0; k < Math.min(radius, count); k++) sum += from[start + k * step]!;
    for (let k = 0; k < count; k++) {
      if (k + radius < count) sum += from[start + (k + radius) * step]!;
      if (k - radius - 1 >= 0) sum -= from[start + (k - radius - 1) * step]!;
      to[start + k * step] = sum * share;
    }
  };
  let [from, to] = [data.slice(), new Float32Array(data.length)];
  for (const along of ['row', 'column', 'row', 'column'] as const) {
    const rows = along === 'row';
    for (let k = 0; k < (rows ? height : width); k++) {
      line(from, to, rows ? width : height, rows ? k * width : k, rows ? 1 : width);
    }
    [from, to] = [to, from];
  }
  return from;
}

/**
 * Brightness against its surroundings, over how much it varies there: grain shows alike in light and shade. Only what
 * lies within counts as surroundings (normalised convolution), or a nail or the wood's edge would outshine the grain.
 * @param within 1 where it is asked for; 0 elsewhere, where the contrast is 0.
 * @param sigma of the surroundings, px. @param grain variation below which there is only noise, grey levels.
 */
export function localContrast(light: Raster, within: Uint8Array, sigma: number, grain: number): Raster {
  const share = surroundings({ ...light, data: Float32Array.from(within) }, sigma);
  const average = (data: Float32Array): Float32Array =>
    surroundings({ ...light, data: data.map((value, i) => (within[i] === 0 ? 0 : value)) }, sigma).map(
      (value, i) => value / Math.max(1e-3, share[i]!),
    );
  const fine = blurred(light, 0.8).data;
  const mean = average(fine);
  const off = fine.map((value, i) => (within[i] === 0 ? 0 : value - mean[i]!));
  const spread = average(off.map((value) => value * value));
  return { ...light, data: off.map((value, i) => value / Math.sqrt(Math.max(0, spread[i]!) + grain * grain)) };
}
