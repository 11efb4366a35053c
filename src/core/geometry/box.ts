/** An upright rectangle, y up. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/**
 * The smallest box round rings of points.
 * @param rings each x, y, x, y …
 * @returns null when there is no point.
 */
export function boxOfRings(rings: readonly Float64Array[]): Box | null {
  let left = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let bottom = Number.POSITIVE_INFINITY;
  let top = Number.NEGATIVE_INFINITY;
  for (const ring of rings) {
    for (let at = 0; at + 1 < ring.length; at += 2) {
      const x = ring[at]!;
      const y = ring[at + 1]!;
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < bottom) bottom = y;
      if (y > top) top = y;
    }
  }
  return left <= right && bottom <= top ? { left, right, bottom, top } : null;
}

/** The box that holds all of them; null when there are none. */
export function unionOfBoxes(boxes: readonly Box[]): Box | null {
  let whole = boxes[0] ?? null;
  for (const box of boxes) {
    whole = {
      left: Math.min(whole!.left, box.left),
      right: Math.max(whole!.right, box.right),
      bottom: Math.min(whole!.bottom, box.bottom),
      top: Math.max(whole!.top, box.top),
    };
  }
  return whole;
}

export const boxMiddle = (box: Box): { readonly x: number; readonly y: number } => ({
  x: (box.left + box.right) / 2,
  y: (box.bottom + box.top) / 2,
});
