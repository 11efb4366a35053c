import { alongColumns, alongRows, gaussianKernel } from './gaussian.ts';
import type { ColourRaster } from './reduce.ts';
import { quantile } from './statistics.ts';

/** Thin edges of a picture, whichever channels they show in. */
export interface ColourEdges {
  readonly width: number;
  readonly height: number;
  /** Direction in which the edge runs, degrees 0–179, per pixel, row-major; {@link NO_EDGE} where there is none. */
  readonly direction: Uint8Array;
  /** How much the colour changes there, grey levels a pixel. */
  readonly strength: Float32Array;
}

export const NO_EDGE = 255;

/** A step of colour per pixel below this is grain, grey levels. */
const LEAST_STEP = 3;

/**
 * Edges by the colour gradient: the direction in which red, green and blue together change most (S. Di Zenzo, "A note on
 * the gradient of a multi-image", 1986), thinned to the crest.
 */
export function colourEdges(picture: ColourRaster): ColourEdges {
  const { width, height } = picture;
  const size = width * height;
  const xx = new Float32Array(size);
  const yy = new Float32Array(size);
  const xy = new Float32Array(size);
  const kernel = gaussianKernel(0.9);
  for (const data of picture.channels) {
    const soft = alongColumns(alongRows({ width, height, data }, kernel), kernel).data;
    for (let y = 1; y < height - 1; y++) {
      for (let x = 1, at = y * width + 1; x < width - 1; x++, at++) {
        const dx = (soft[at + 1]! - soft[at - 1]!) / 2;
        const dy = (soft[at + width]! - soft[at - width]!) / 2;
        xx[at]! += dx * dx;
        yy[at]! += dy * dy;
        xy[at]! += dx * dy;
      }
    }
  }
  const strength = new Float32Array(size);
  const slope = new Float32Array(size);
  for (let at = 0; at < size; at++) {
    const half = (xx[at]! - yy[at]!) / 2;
    strength[at] = Math.sqrt((xx[at]! + yy[at]!) / 2 + Math.hypot(half, xy[at]!));
    slope[at] = Math.atan2(xy[at]!, half) / 2;
  }
  const direction = new Uint8Array(size).fill(NO_EDGE);
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1, at = y * width + 1; x < width - 1; x++, at++) {
      const here = strength[at]!;
      if (here < LEAST_STEP) continue;
      const across = slope[at]!;
      const sideways = Math.abs(Math.cos(across)) > Math.abs(Math.sin(across));
      const next = sideways ? 1 : width;
      const aslant = sideways ? Math.round(Math.tan(across)) * width : Math.round(1 / Math.tan(across));
      const step = next + aslant;
      if (here < strength[at + step]! || here <= strength[at - step]!) continue;
      // The edge runs at right angles to the change.
      direction[at] = Math.round((across * 180) / Math.PI + 270) % 180;
    }
  }
  return { width, height, direction, strength };
}

/** Share of the edge pixels that are bold. */
const BOLD = 0.25;

/** The edges at which colour changes most: where wood meets a table of fainter stripes, the wood's. */
export function boldEdges({ width, height, direction, strength }: ColourEdges): ColourEdges {
  const least = quantile(
    Array.from(strength).filter((_, at) => direction[at] !== NO_EDGE),
    1 - BOLD,
  );
  const bold = direction.map((value, at) => (strength[at]! < least ? NO_EDGE : value));
  return { width, height, direction: bold, strength };
}

/** Difference of two directions, degrees 0–90. */
export function directionsApart(a: number, b: number): number {
  const apart = Math.abs(a - b) % 180;
  return Math.min(apart, 180 - apart);
}
