/** Repeatable noise for painting: the same place and seed always give the same value. All values lie in 0..1. */

/** One value for a whole-number place. */
export function hashNoise(x: number, y: number, seed: number): number {
  let mixed = Math.imul(x | 0, 374_761_393) + Math.imul(y | 0, 668_265_263) + Math.imul(seed | 0, 974_634_777);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 1_274_126_177);
  mixed ^= mixed >>> 16;
  return (mixed >>> 0) / 4_294_967_296;
}

/** Smooth noise: hashed corners of the unit grid, blended. */
export function smoothNoise(x: number, y: number, seed: number): number {
  const column = Math.floor(x);
  const row = Math.floor(y);
  const fx = x - column;
  const fy = y - row;
  const u = fx * fx * (3 - 2 * fx);
  const v = fy * fy * (3 - 2 * fy);
  const a = hashNoise(column, row, seed);
  const b = hashNoise(column + 1, row, seed);
  const c = hashNoise(column, row + 1, seed);
  const d = hashNoise(column + 1, row + 1, seed);
  return a + (b - a) * u + (c - a) * v + (a - b - c + d) * u * v;
}

/** Smooth noise in three sizes, each half as strong and twice as fine. */
export function cloudNoise(x: number, y: number, seed: number): number {
  return (
    (smoothNoise(x, y, seed) * 4 +
      smoothNoise(x * 2.1, y * 2.1, seed + 1) * 2 +
      smoothNoise(x * 4.3, y * 4.3, seed + 2)) /
    7
  );
}
