/** Heights of the two ends on either side, the nearer ones in the middle; null where they aren't known. */
export type HeightsBeside = readonly [
  beyondLeft: number | null,
  left: number | null,
  right: number | null,
  beyondRight: number | null,
];

/**
 * How far the ends beside one that lies below them all, or above, step towards it from end to end: it may be the foot of
 * a V, or the tip of one. 0 where one side doesn't go its way: then it is neither.
 */
export function stepsTowards([beyondLeft, left, right, beyondRight]: HeightsBeside, below: boolean): number {
  const step = (far: number | null, near: number | null): number[] =>
    far === null || near === null ? [] : [below ? far - near : near - far];
  const steps = [...step(beyondLeft, left), ...step(beyondRight, right)];
  return steps.some((one) => one <= 0) ? 0 : Math.max(0, ...steps);
}
