import { type LoomPose, toLoom } from './loomPose.ts';
import type { FollowedEnd } from './measureStrings.ts';

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? 0;
};

/** x − notch at y = 0 of one string's lower part, and how far its samples stray from one line. */
function footOf(
  pose: Pick<LoomPose, 'homography' | 'lens'>,
  end: FollowedEnd,
): { notch: number; off: number; stray: number } | null {
  if (end.lower.length < 4) return null;
  const places = end.lower.map((sample) => toLoom(pose, sample.px, sample.py));
  const slopes: number[] = [];
  for (let i = 0; i < places.length; i++) {
    for (let j = i + 3; j < places.length; j += 2) {
      slopes.push((places[j]!.x - places[i]!.x) / (places[j]!.y - places[i]!.y));
    }
  }
  const slope = median(slopes);
  const off = median(places.map((place) => place.x - end.notch - slope * place.y));
  const stray = median(places.map((place) => Math.abs(place.x - end.notch - slope * place.y - off)));
  return { notch: end.notch, off, stray };
}

/**
 * Which ends' lower parts can be believed. On cardboard or under hard light shade is easily followed instead of string,
 * for many ends alike; then the frame and the upper strings contradict them.
 * @param pose from the upper strings and the frame alone.
 * @param pitch mm between notches: shade between strings lies half of it aside.
 * @param pxPerMm sets how finely a place can be told at all.
 */
export function believedLower(
  pose: Pick<LoomPose, 'homography' | 'lens'>,
  ends: readonly FollowedEnd[],
  pitch: number,
  pxPerMm: number,
): Set<number> {
  const feet = ends.map((end) => ({ end: end.end, foot: footOf(pose, end) }));
  const seen = feet.flatMap(({ foot }) => (foot ? [foot] : []));
  if (seen.length < 4) return new Set();
  // A common shift, and a common stretch about the middle, within what frame and upper strings leave open.
  const middle = median(seen.map((foot) => foot.notch));
  const stretches: number[] = [];
  for (let i = 0; i < seen.length; i++) {
    for (let j = i + Math.ceil(seen.length / 3); j < seen.length; j++) {
      stretches.push((seen[j]!.off - seen[i]!.off) / (seen[j]!.notch - seen[i]!.notch));
    }
  }
  const stretch = median(stretches);
  const shift = median(seen.map((foot) => foot.off - stretch * (foot.notch - middle)));
  const half = Math.max(...seen.map((foot) => Math.abs(foot.notch - middle)));
  const scatter = median(seen.map((foot) => Math.abs(foot.off - shift - stretch * (foot.notch - middle))));
  const loose = Math.min(1.5, 0.28 * pitch);
  const fine = Math.max(0.12, 0.3 / pxPerMm);
  if (Math.abs(shift) > Math.min(0.5, loose) || Math.abs(stretch) * half > loose || scatter > fine) return new Set();
  return new Set(
    feet
      .filter(
        ({ foot }) =>
          foot && foot.stray < fine && Math.abs(foot.off - shift - stretch * (foot.notch - middle)) < 2.5 * fine,
      )
      .map(({ end }) => end),
  );
}
