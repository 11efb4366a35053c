import type { Camera, PictureSize } from './camera.ts';
import { notchX } from './coarseCamera.ts';
import { halfEnd } from './coarseLoom.ts';
import type { Expected } from './expected.ts';
import { mapOf } from './firstLook.ts';
import { type FollowSettings, followString, type StringSample } from './followString.ts';
import type { Photo } from './raster.ts';
import type { WarpInView } from './warpInView.ts';

/** One end as followed down from the top bar and up from the bottom bar. */
export interface FollowedEnd {
  readonly end: number;
  readonly notch: number;
  /** From the top bar down, as far as it looks like the same bare string. */
  readonly upper: readonly StringSample[];
  /** From the bottom bar up to below the twining. */
  readonly lower: readonly StringSample[];
}

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? 0;
};

/** Settings for a camera: looks every 1.5 mm, samples two thirds of a pixel apart. */
export function followSettings(expected: Expected, pxPerMm: number): FollowSettings {
  return {
    pitch: expected.pitch,
    halfEnd: halfEnd(expected),
    blur: Math.max(0.12, 1.1 / pxPerMm),
    step: 1.5,
    fine: 0.67 / pxPerMm,
  };
}

/** Follows every end the plan has. @param inView where the picture begins to show them, if it needn't hold the whole loom. */
export function measureStrings(
  photo: Photo,
  camera: Camera,
  size: PictureSize,
  mirrored: boolean,
  expected: Expected,
  settings: FollowSettings,
  inView: Pick<WarpInView, 'topOf'> | null = null,
): FollowedEnd[] {
  const toPhoto = mapOf(camera, size, mirrored);
  const ends: FollowedEnd[] = [];
  for (let end = 0; end < expected.ends; end++) {
    const notch = notchX(expected, expected.firstNotch + end);
    const top = inView ? inView.topOf(end) : expected.openingHeight - 2;
    const upper = top === null ? [] : followString(photo, toPhoto, notch, top, expected.base, 0, settings);
    const lower = expected.base > 8 ? followString(photo, toPhoto, notch, 2, expected.base - 4, 0, settings) : [];
    ends.push({ end, notch, upper: barePart(upper), lower });
  }
  return ends;
}

/**
 * The leading samples that look like one bare string: its colour near the notch, contrast that does not collapse, and
 * a place on one straight line. Marks on the string are short and passed over; the cloth is not.
 */
export function barePart(samples: readonly StringSample[]): StringSample[] {
  if (samples.length < 6) return [...samples];
  const head = samples.slice(0, 14);
  const usual = median(head.map((sample) => sample.profile.contrast));
  const core = [0, 1, 2].map((c) => median(head.map((sample) => sample.profile.core[c]!)));
  const good = samples.map((sample) => {
    const apart = Math.hypot(...sample.profile.core.map((value, c) => value - core[c]!));
    return sample.profile.contrast > 0.35 * usual && apart < Math.max(28, 0.8 * usual);
  });
  let end = samples.length;
  for (let k = 0; k < samples.length; k++) {
    if (good[k]) continue;
    const next = good.slice(k, k + 5);
    if (next.filter((value) => !value).length >= 4 || next.length < 3) {
      end = k;
      break;
    }
  }
  // The last few millimetres may already lean on the weft.
  return samples.slice(0, Math.max(0, end - 2)).filter((_, k) => good[k]);
}

/** What a look at a string is worth, mm: faint strings are led astray by shade and by the grain of what lies behind. */
export const lookSigma = (sample: StringSample): number =>
  Math.hypot(sample.sigma, 0.04 + 2.5 / Math.max(5, sample.profile.contrast));
