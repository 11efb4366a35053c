import type { FrameSide } from './oddSide.ts';
import type { RefinedPose } from './refinePose.ts';

/** So large a share of the strings is nearly all. */
const NEARLY_ALL = 0.85;
/** Least share of a bar or rail, by its inner or its outer edge, for strings to be tied to it. */
const SIDE_CLEAR = 0.6;

/**
 * Strings in nearly all notches of both bars, both bars seen and a rail: hardly anything else looks so, whatever hides
 * the rest. Without a rail gaps might be taken for strings.
 */
export function stringsSure({ upperShare, lowerShare, frame }: RefinedPose): boolean {
  const seen = (side: FrameSide): number =>
    Math.max(...frame.edges.flatMap((edge) => (edge.side === side ? [edge.support] : [])));
  return (
    Math.min(upperShare, lowerShare) >= NEARLY_ALL &&
    Math.min(seen('bottom'), seen('top')) >= SIDE_CLEAR &&
    Math.max(seen('left'), seen('right')) >= SIDE_CLEAR
  );
}
