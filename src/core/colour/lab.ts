import { encodedFromLinear, linearFromEncoded, type Srgb } from './srgb.ts';

/** CIE 1931 XYZ, white's Y = 1, for the D65 daylight white. */
export interface Xyz {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** CIE L*a*b* under D65: lightness 0–100, a green to red, b blue to yellow. */
export interface Lab {
  readonly lightness: number;
  readonly a: number;
  readonly b: number;
}

/** D65 for the 2° observer, as sRGB's matrix sends white. */
const white: Xyz = { x: 0.95047, y: 1, z: 1.08883 };

/** sRGB to XYZ by its primaries and D65 white (IEC 61966-2-1, matrix to seven places). */
export function xyzFromSrgb(colour: Srgb): Xyz {
  const r = linearFromEncoded(colour.red);
  const g = linearFromEncoded(colour.green);
  const b = linearFromEncoded(colour.blue);
  return {
    x: 0.4124564 * r + 0.3575761 * g + 0.1804375 * b,
    y: 0.2126729 * r + 0.7151522 * g + 0.072175 * b,
    z: 0.0193339 * r + 0.119192 * g + 0.9503041 * b,
  };
}

/** XYZ to sRGB; channels may fall outside 0–1 when the colour can't be shown. */
export function srgbFromXyz({ x, y, z }: Xyz): Srgb {
  const r = 3.2404542 * x - 1.5371385 * y - 0.4985314 * z;
  const g = -0.969266 * x + 1.8760108 * y + 0.041556 * z;
  const b = 0.0556434 * x - 0.2040259 * y + 1.0572252 * z;
  return { red: encodedFromLinear(r), green: encodedFromLinear(g), blue: encodedFromLinear(b) };
}

/** CIE 15: 216/24389 is where the cube root gives way to a straight line of slope 24389/27/116. */
const knee = 216 / 24389;
const slope = 24389 / 27;
const curve = (share: number): number => (share > knee ? Math.cbrt(share) : (slope * share + 16) / 116);
const curveBack = (value: number): number => (value ** 3 > knee ? value ** 3 : (116 * value - 16) / slope);

/** XYZ to L*a*b* (CIE 15). */
export function labFromXyz(colour: Xyz): Lab {
  const x = curve(colour.x / white.x);
  const y = curve(colour.y / white.y);
  const z = curve(colour.z / white.z);
  return { lightness: 116 * y - 16, a: 500 * (x - y), b: 200 * (y - z) };
}

/** L*a*b* to XYZ (CIE 15). */
export function xyzFromLab({ lightness, a, b }: Lab): Xyz {
  const y = (lightness + 16) / 116;
  return { x: white.x * curveBack(y + a / 500), y: curveBack(y), z: white.z * curveBack(y - b / 200) };
}

export const labFromSrgb = (colour: Srgb): Lab => labFromXyz(xyzFromSrgb(colour));
export const srgbFromLab = (colour: Lab): Srgb => srgbFromXyz(xyzFromLab(colour));
