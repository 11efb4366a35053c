import type { Raster } from './raster.ts';
import type { ColourRaster } from './reduce.ts';

/** How much of red, green and blue make one channel. */
export type Blend = readonly [number, number, number];

/** Brightness (Rec. 601 luma weights), and two channels that see strings which differ from the table in hue alone. */
export const brightness: Blend = [0.299, 0.587, 0.114];
export const redAgainstGreen: Blend = [0.7, -0.7, 0];
export const yellowAgainstBlue: Blend = [0.4, 0.4, -0.8];

/** One channel out of three. */
export function blendChannels(picture: ColourRaster, blend: Blend): Raster {
  const [red, green, blue] = picture.channels;
  const [r, g, b] = blend;
  const data = new Float32Array(red.length);
  for (let i = 0; i < data.length; i++) data[i] = r * red[i]! + g * green[i]! + b * blue[i]!;
  return { width: picture.width, height: picture.height, data };
}
