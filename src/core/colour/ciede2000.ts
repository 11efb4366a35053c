import type { Lab } from './lab.ts';

const degrees = (radians: number): number => (radians * 180) / Math.PI;
const radians = (angle: number): number => (angle * Math.PI) / 180;

/** Hue angle 0–360°; 0 for a grey, which has none. */
function hueOf(a: number, b: number): number {
  if (a === 0 && b === 0) return 0;
  const hue = degrees(Math.atan2(b, a));
  return hue < 0 ? hue + 360 : hue;
}

/**
 * How different two colours look: the CIEDE2000 difference with unit weights. About 1 is just noticeable side by side.
 * Source: G. Sharma, W. Wu, E. N. Dalal, Color Research and Application 30(1) (2005) 21–30, equations 2 to 22.
 * @returns the difference, ≥ 0; the same whichever way round the colours are given.
 */
export function ciede2000(one: Lab, other: Lab): number {
  const seventh = 25 ** 7;
  const meanChromaAb = (Math.hypot(one.a, one.b) + Math.hypot(other.a, other.b)) / 2;
  const stretch = 1 + 0.5 * (1 - Math.sqrt(meanChromaAb ** 7 / (meanChromaAb ** 7 + seventh)));
  const a1 = one.a * stretch;
  const a2 = other.a * stretch;
  const chroma1 = Math.hypot(a1, one.b);
  const chroma2 = Math.hypot(a2, other.b);
  const hue1 = hueOf(a1, one.b);
  const hue2 = hueOf(a2, other.b);
  const oneIsGrey = chroma1 * chroma2 === 0;

  let hueStep = oneIsGrey ? 0 : hue2 - hue1;
  if (hueStep > 180) hueStep -= 360;
  else if (hueStep < -180) hueStep += 360;

  let meanHue = hue1 + hue2;
  if (!oneIsGrey) {
    if (Math.abs(hue1 - hue2) <= 180) meanHue /= 2;
    else meanHue = meanHue < 360 ? (meanHue + 360) / 2 : (meanHue - 360) / 2;
  }

  const lightnessStep = other.lightness - one.lightness;
  const chromaStep = chroma2 - chroma1;
  const hueDistance = 2 * Math.sqrt(chroma1 * chroma2) * Math.sin(radians(hueStep / 2));
  const meanLightness = (one.lightness + other.lightness) / 2;
  const meanChroma = (chroma1 + chroma2) / 2;

  const hueTerm =
    1 -
    0.17 * Math.cos(radians(meanHue - 30)) +
    0.24 * Math.cos(radians(2 * meanHue)) +
    0.32 * Math.cos(radians(3 * meanHue + 6)) -
    0.2 * Math.cos(radians(4 * meanHue - 63));
  const fromMid = (meanLightness - 50) ** 2;
  const weightLightness = 1 + (0.015 * fromMid) / Math.sqrt(20 + fromMid);
  const weightChroma = 1 + 0.045 * meanChroma;
  const weightHue = 1 + 0.015 * meanChroma * hueTerm;
  const turn = 30 * Math.exp(-(((meanHue - 275) / 25) ** 2));
  const rotation = -2 * Math.sqrt(meanChroma ** 7 / (meanChroma ** 7 + seventh)) * Math.sin(radians(2 * turn));

  const l = lightnessStep / weightLightness;
  const c = chromaStep / weightChroma;
  const h = hueDistance / weightHue;
  return Math.sqrt(Math.max(0, l * l + c * c + h * h + rotation * c * h));
}
