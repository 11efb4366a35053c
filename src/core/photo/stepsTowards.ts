/** Heights of the two ends on either side, the nearer ones in the middle; null where they aren't known. */
export type HeightsBeside = readonly [
  beyondLeft: number | null,
  left: number | null,
  right: number | null,
  beyondRight: number | null,
];

/**
 * How far the ends beside one that lies below them all, or above, step from end to end. Where both sides go its way it
 * may be the foot of a V, or the tip of one: the larger step counts; else the smaller, and one side alone says nothing.
 */
export function stepsTowards([beyondLeft, left, right, beyondRight]: HeightsBeside, below: boolean): number {
  const step = (far: number | null, near: number | null): number[] =>
    far === null || near === null ? [] : [below ? far - near : near - far];
  const steps = [...step(beyondLeft, left), ...step(beyondRight, right)];
  if (steps.every((one) => one > 0)) return Math.max(0, ...steps);
  return steps.length < 2 ? 0 : Math.min(...steps.map(Math.abs));
}
