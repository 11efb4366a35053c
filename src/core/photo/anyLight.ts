/**
 * Distance of a colour from another in whatever light falls on it: from the other made darker or lighter, between
 * `darkest` and `lightest` times, as comes nearest.
 */
export function apartInAnyLight(
  seen: ArrayLike<number>,
  own: readonly number[],
  darkest: number,
  lightest: number,
): number {
  const power = own.reduce((sum, value) => sum + value * value, 0);
  const product = own.reduce((sum, value, c) => sum + value * seen[c]!, 0);
  const light = Math.max(darkest, Math.min(lightest, product / Math.max(1, power)));
  return Math.hypot(...own.map((value, c) => seen[c]! - light * value));
}
