/**
 * Spreads turns evenly over the steps of a straight edge: counts differ by at most one, and the smaller ones lie as far
 * apart as they can, the same read from either end where the counts allow it.
 * @returns turns of each step, lowest first; empty when there is no step.
 */
export function spreadTurns(turns: number, steps: number): readonly number[] {
  const spread: number[] = [];
  for (let step = 0; step < steps; step++) {
    spread.push(Math.floor(((step + 1) * turns) / steps + 0.5) - Math.floor((step * turns) / steps + 0.5));
  }
  return spread;
}
