import { linearFromEncoded, type Srgb, srgbFromHex } from './srgb.ts';

/** Relative luminance, 0 black to 1 white (WCAG 2.2 definition, with sRGB's own threshold 0.04045). */
export const luminance = (colour: Srgb): number =>
  0.2126 * linearFromEncoded(colour.red) +
  0.7152 * linearFromEncoded(colour.green) +
  0.0722 * linearFromEncoded(colour.blue);

/** Contrast of two colours, 1 (the same) to 21 (black on white), by WCAG 2.2; order doesn't matter. */
export function contrastRatio(one: Srgb, other: Srgb): number {
  const a = luminance(one);
  const b = luminance(other);
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** The design's ink and white: a letter on a yarn's swatch is written in whichever reads better. */
export function letterColour(background: string): '#171d20' | '#ffffff' {
  const ground = srgbFromHex(background);
  if (ground === null) return '#171d20';
  const ink = srgbFromHex('#171d20')!;
  return contrastRatio(ground, ink) >= contrastRatio(ground, { red: 1, green: 1, blue: 1 }) ? '#171d20' : '#ffffff';
}
