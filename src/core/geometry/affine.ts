/** A plane map (x, y) → (a x + c y + e, b x + d y + f), written in the order open drawing formats use. */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const identity: Affine = [1, 0, 0, 1, 0, 0];

/** First `inner`, then `outer`. */
export function compose(outer: Affine, inner: Affine): Affine {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

export const translation = (dx: number, dy: number): Affine => [1, 0, 0, 1, dx, dy];

/** Anticlockwise by `angle` radians about (x, y), with y up. */
export function rotationAbout(angle: number, x: number, y: number): Affine {
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  return [cosine, sine, -sine, cosine, x - cosine * x + sine * y, y - sine * x - cosine * y];
}

/** Grown by (sx, sy) with (x, y) held still. */
export const scalingAbout = (sx: number, sy: number, x: number, y: number): Affine => [
  sx,
  0,
  0,
  sy,
  x - sx * x,
  y - sy * y,
];

/** Mirror image about the line through (x, y) that runs at `angle` radians from the x axis. */
export function mirrorInLine(angle: number, x: number, y: number): Affine {
  const cosine = Math.cos(2 * angle);
  const sine = Math.sin(2 * angle);
  return [cosine, sine, sine, -cosine, x - cosine * x - sine * y, y - sine * x + cosine * y];
}

/** Mirror image about the upright line at `x`; exact, without sines. */
export const mirrorUpright = (x: number): Affine => [-1, 0, 0, 1, 2 * x, 0];

export const applyX = (map: Affine, x: number, y: number): number => map[0] * x + map[2] * y + map[4];
export const applyY = (map: Affine, x: number, y: number): number => map[1] * x + map[3] * y + map[5];
/** Area's share after the map; negative when it turns the plane over. */
export const determinant = (map: Affine): number => map[0] * map[3] - map[1] * map[2];

/** The ring with every point mapped; x, y, x, y … */
export function mapRing(map: Affine, ring: Float64Array): Float64Array {
  const mapped = new Float64Array(ring.length);
  for (let at = 0; at + 1 < ring.length; at += 2) {
    mapped[at] = applyX(map, ring[at]!, ring[at + 1]!);
    mapped[at + 1] = applyY(map, ring[at]!, ring[at + 1]!);
  }
  return mapped;
}
