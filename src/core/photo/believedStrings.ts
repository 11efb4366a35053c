import { type LoomPose, toLoom } from './loomPose.ts';
import type { FollowedEnd } from './measureStrings.ts';
import { median } from './statistics.ts';

/** Which part of the strings, where it meets the bar, and how far what is known already lets it lie off. */
export interface StringCheck {
  readonly part: 'upper' | 'lower';
  /** y of the bar, mm. */
  readonly bar: number;
  /** Most that all strings together may lie to one side, and most that the outermost may lie out by a stretch, mm. */
  readonly mostShift: number;
  readonly mostStretch: number;
}

/** x − notch of one string at the bar, and how far its samples stray from one line. */
function footOf(
  pose: Pick<LoomPose, 'homography' | 'lens'>,
  end: FollowedEnd,
  { part, bar }: StringCheck,
): { notch: number; off: number; stray: number } | null {
  const samples = end[part];
  if (samples.length < 4) return null;
  // Where the string comes from the bar: further along it may be drawn aside by the cloth.
  const places = samples.slice(0, 24).map((sample) => toLoom(pose, sample.px, sample.py));
  const slopes: number[] = [];
  for (let i = 0; i < places.length; i++) {
    for (let j = i + 3; j < places.length; j += 2) {
      slopes.push((places[j]!.x - places[i]!.x) / (places[j]!.y - places[i]!.y));
    }
  }
  const slope = median(slopes);
  const at = (place: { x: number; y: number }) => place.x - end.notch - slope * (place.y - bar);
  const off = median(places.map(at));
  const stray = median(places.map((place) => Math.abs(at(place) - off)));
  return { notch: end.notch, off, stray };
}

/**
 * Which ends' strings can be believed. On cardboard, on a striped table or under hard light shade is easily followed
 * instead of string, for many ends alike; then what is known of the pose already contradicts them.
 * @param pose from other things than these strings.
 * @param pxPerMm sets how finely a place can be told at all.
 * @returns their numbers; empty when they contradict the pose or each other.
 */
export function believedStrings(
  pose: Pick<LoomPose, 'homography' | 'lens'>,
  ends: readonly FollowedEnd[],
  check: StringCheck,
  pxPerMm: number,
): Set<number> {
  const feet = ends.map((end) => ({ end: end.end, foot: footOf(pose, end, check) }));
  const seen = feet.flatMap(({ foot }) => (foot ? [foot] : []));
  if (seen.length < 4) return new Set();
  // A common shift, and a common stretch about the middle, within what the pose leaves open.
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
  const fine = Math.max(0.12, 0.3 / pxPerMm);
  if (Math.abs(shift) > check.mostShift || Math.abs(stretch) * half > check.mostStretch || scatter > fine) {
    return new Set();
  }
  return new Set(
    feet
      .filter(
        ({ foot }) =>
          foot && foot.stray < fine && Math.abs(foot.off - shift - stretch * (foot.notch - middle)) < 2.5 * fine,
      )
      .map(({ end }) => end),
  );
}
