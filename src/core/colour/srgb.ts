/** An sRGB colour, each channel 0 to 1, as encoded (not linear light). */
export interface Srgb {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}

/** sRGB's curve from an encoded channel, 0–1, to linear light, 0–1 (IEC 61966-2-1). */
export const linearFromEncoded = (encoded: number): number =>
  encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4;

/** The way back: linear light, 0–1, to an encoded channel (IEC 61966-2-1). */
export const encodedFromLinear = (linear: number): number =>
  linear <= 0.0031308 ? linear * 12.92 : 1.055 * linear ** (1 / 2.4) - 0.055;

/** @returns the colour of `#rrggbb`, or null when the text is not one. */
export function srgbFromHex(hex: string): Srgb | null {
  const match = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(hex);
  if (match === null) return null;
  const channel = (at: number) => Number.parseInt(match[at]!, 16) / 255;
  return { red: channel(1), green: channel(2), blue: channel(3) };
}

/** @returns `#rrggbb` in lower case; channels are held to 0–1 first. */
export function hexFromSrgb(colour: Srgb): string {
  const channel = (value: number) =>
    Math.round(Math.min(1, Math.max(0, value)) * 255)
      .toString(16)
      .padStart(2, '0');
  return `#${channel(colour.red)}${channel(colour.green)}${channel(colour.blue)}`;
}
