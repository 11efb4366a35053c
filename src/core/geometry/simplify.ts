/**
 * Fewer points for the same line: keeps a point only where leaving it out would move the line by more than
 * `tolerance`. Source: D. Douglas and T. Peucker, The Canadian Cartographer 10(2) (1973) 112–122; with its own stack
 * instead of recursion.
 * @param points x, y, x, y …; the first and last are kept.
 */
export function simplifyLine(points: Float64Array, tolerance: number): Float64Array {
  const count = points.length / 2;
  if (count <= 2) return points;
  const keep = new Uint8Array(count);
  keep[0] = 1;
  keep[count - 1] = 1;
  const stack: [number, number][] = [[0, count - 1]];
  while (stack.length > 0) {
    const [first, last] = stack.pop()!;
    const fromX = points[2 * first]!;
    const fromY = points[2 * first + 1]!;
    const dx = points[2 * last]! - fromX;
    const dy = points[2 * last + 1]! - fromY;
    const length = dx * dx + dy * dy;
    let furthest = -1;
    let distance = tolerance;
    for (let at = first + 1; at < last; at++) {
      const px = points[2 * at]! - fromX;
      const py = points[2 * at + 1]! - fromY;
      const along = length === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / length));
      const away = Math.hypot(px - along * dx, py - along * dy);
      if (away > distance) {
        distance = away;
        furthest = at;
      }
    }
    if (furthest >= 0) {
      keep[furthest] = 1;
      stack.push([first, furthest], [furthest, last]);
    }
  }
  const kept: number[] = [];
  for (let at = 0; at < count; at++) if (keep[at] === 1) kept.push(points[2 * at]!, points[2 * at + 1]!);
  return Float64Array.from(kept);
}

/** The same for a closed ring: it is cut at its first point and at the point furthest from that. */
export function simplifyRing(ring: Float64Array, tolerance: number): Float64Array {
  const count = ring.length / 2;
  if (count <= 3) return ring;
  let furthest = 1;
  let distance = -1;
  for (let at = 1; at < count; at++) {
    const away = Math.hypot(ring[2 * at]! - ring[0]!, ring[2 * at + 1]! - ring[1]!);
    if (away > distance) {
      distance = away;
      furthest = at;
    }
  }
  const there = simplifyLine(ring.slice(0, 2 * furthest + 2), tolerance);
  const closing = new Float64Array(ring.length - 2 * furthest + 2);
  closing.set(ring.subarray(2 * furthest));
  closing.set(ring.subarray(0, 2), closing.length - 2);
  const back = simplifyLine(closing, tolerance);
  return Float64Array.from([...there, ...back.subarray(2, back.length - 2)]);
}
