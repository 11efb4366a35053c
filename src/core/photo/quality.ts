import type { ReasonCode } from '../model/check.ts';
import { blendChannels, brightness } from './blend.ts';
import type { PictureSize } from './camera.ts';
import { blurred } from './gaussian.ts';
import type { ColourRaster } from './reduce.ts';

/** Why a picture is not worth measuring, in the weaver's words. */
export interface QualityProblem {
  readonly code: Extract<ReasonCode, 'too-small' | 'too-dark' | 'too-bright' | 'blurred'>;
  readonly message: string;
  readonly remedy: string;
}

/** What can be said of a picture before anything is found in it. */
export interface QualityFigures {
  /** Brightness below which 98 % of the pixels lie, and above which 90 %: 0–255. */
  readonly high: number;
  readonly low: number;
  /** Share of fine detail in all detail, below 0.2 when out of focus or shaken, 0.35 and more when sharp. */
  readonly sharpness: number;
}

/** Shortest long side, px: finer strings could not be told apart below. */
const SMALLEST = 700;

export function qualityFigures(picture: ColourRaster): QualityFigures {
  const light = blendChannels(picture, brightness);
  const sorted = Float32Array.from({ length: 4000 }, (_, k) => {
    return light.data[Math.floor(((k + 0.5) / 4000) * light.data.length)]!;
  }).sort();
  const once = blurred(light, 1);
  const wide = blurred(light, 3);
  let fine = 0;
  let coarse = 0;
  for (let i = 0; i < light.data.length; i += 3) {
    const difference = Math.abs(once.data[i]! - wide.data[i]!);
    // Only where there is structure: plain stretches hold nothing but grain.
    if (difference < 6) continue;
    coarse += difference;
    fine += Math.abs(light.data[i]! - once.data[i]!);
  }
  return { high: sorted[3920]!, low: sorted[400]!, sharpness: coarse > 0 ? fine / coarse : 0 };
}

/** The first thing that speaks against measuring, or null. */
export function pictureQuality(size: PictureSize, picture: ColourRaster): QualityProblem | null {
  if (Math.max(size.width, size.height) < SMALLEST || Math.min(size.width, size.height) < SMALLEST / 2) {
    return {
      code: 'too-small',
      message: `The picture is ${size.width} × ${size.height} pixels: too small to tell strings apart.`,
      remedy: 'Use the original picture, at least 1200 pixels on its long side.',
    };
  }
  const figures = qualityFigures(picture);
  if (figures.high < 40) {
    return {
      code: 'too-dark',
      message: 'The picture is too dark to see the strings.',
      remedy: 'Take it again by a window or under a lamp.',
    };
  }
  if (figures.low > 246) {
    return {
      code: 'too-bright',
      message: 'The picture is so bright that nothing shows in it.',
      remedy: 'Take it again with less light, or tap the loom so that the camera adjusts to it.',
    };
  }
  if (figures.sharpness < BLURRED) {
    return {
      code: 'blurred',
      message: 'The picture is out of focus or shaken.',
      remedy: 'Hold still, let the camera focus on the strings, and take it again.',
    };
  }
  return null;
}

/** Sharpness below which strings are too washed out to follow (tried on sharp pictures blurred by 2 and 5 px). */
const BLURRED = 0.18;
