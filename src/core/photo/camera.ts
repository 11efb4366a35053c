import type { Lens } from './lens.ts';

/**
 * A camera with square pixels looking at the loom, its principal point in the middle of the picture.
 * Parameters, in order: turn about x, y, z (rotation vector, applied after the upright looking-down pose), the loom
 * point (mm) that lies on the optical axis' foot … see {@link cameraProjection}; ln of the distance in mm; ln of the
 * focal length in px; k1; k2.
 */
export interface Camera {
  /** Rotation vector, radians. */
  readonly turn: readonly [number, number, number];
  /** Loom point that the middle of the picture shows, mm. */
  readonly aimX: number;
  readonly aimY: number;
  /** Natural logarithm of the distance from there to the camera, mm. */
  readonly logDistance: number;
  /** Natural logarithm of the focal length, px. */
  readonly logFocal: number;
  readonly k1: number;
  readonly k2: number;
}

export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

export const cameraToVector = (camera: Camera): Float64Array =>
  Float64Array.of(...camera.turn, camera.aimX, camera.aimY, camera.logDistance, camera.logFocal, camera.k1, camera.k2);

export const cameraFromVector = (v: ArrayLike<number>): Camera => ({
  turn: [v[0]!, v[1]!, v[2]!],
  aimX: v[3]!,
  aimY: v[4]!,
  logDistance: v[5]!,
  logFocal: v[6]!,
  k1: v[7]!,
  k2: v[8]!,
});

/** Steps for numerical derivatives, in the order of {@link cameraToVector}. */
export const cameraSteps: readonly number[] = [1e-5, 1e-5, 1e-5, 1e-3, 1e-3, 1e-6, 1e-5, 1e-5, 1e-5];

/** Radii count in half-diagonals from the middle of the picture. */
export const lensOf = (camera: Pick<Camera, 'k1' | 'k2'>, size: PictureSize): Lens => ({
  centreX: (size.width - 1) / 2,
  centreY: (size.height - 1) / 2,
  halfDiagonal: Math.hypot(size.width, size.height) / 2,
  k1: camera.k1,
  k2: camera.k2,
});

/** Rotation matrix of a rotation vector (Rodrigues), row-major. */
export function rotationMatrix(turn: readonly [number, number, number]): number[] {
  const [x, y, z] = turn;
  const angle = Math.hypot(x, y, z);
  if (angle < 1e-12) return [1, -z, y, z, 1, -x, -y, x, 1];
  const [a, b, c] = [x / angle, y / angle, z / angle];
  const s = Math.sin(angle);
  const k = 1 - Math.cos(angle);
  return [
    1 - k * (b * b + c * c),
    k * a * b - s * c,
    k * a * c + s * b,
    k * a * b + s * c,
    1 - k * (a * a + c * c),
    k * b * c - s * a,
    k * a * c - s * b,
    k * b * c + s * a,
    1 - k * (a * a + b * b),
  ];
}

/** Product of two 3 × 3 row-major matrices. */
export function multiply(a: readonly number[], b: readonly number[]): number[] {
  const out: number[] = [];
  for (let i = 0; i < 3; i++) {
    for (let j = 0; j < 3; j++) {
      out.push(a[3 * i]! * b[j]! + a[3 * i + 1]! * b[3 + j]! + a[3 * i + 2]! * b[6 + j]!);
    }
  }
  return out;
}

/** Rotation vector of a rotation matrix, by way of the unit quaternion with the largest part first. */
export function rotationVector(m: readonly number[]): [number, number, number] {
  const parts = [
    1 + m[0]! + m[4]! + m[8]!,
    1 + m[0]! - m[4]! - m[8]!,
    1 - m[0]! + m[4]! - m[8]!,
    1 - m[0]! - m[4]! + m[8]!,
  ];
  const xy = m[1]! + m[3]!;
  const xz = m[2]! + m[6]!;
  const yz = m[5]! + m[7]!;
  const sx = m[7]! - m[5]!;
  const sy = m[2]! - m[6]!;
  const sz = m[3]! - m[1]!;
  const rows = [
    [parts[0]!, sx, sy, sz],
    [sx, parts[1]!, xy, xz],
    [sy, xy, parts[2]!, yz],
    [sz, xz, yz, parts[3]!],
  ];
  const q = rows[parts.indexOf(Math.max(...parts))]!;
  const length = Math.hypot(...q) * (q[0]! < 0 ? -1 : 1);
  const [w, x, y, z] = q.map((value) => value / length) as [number, number, number, number];
  const half = Math.hypot(x, y, z);
  const scale = half < 1e-12 ? 2 : (2 * Math.atan2(half, w)) / half;
  return [x * scale, y * scale, z * scale];
}

/**
 * 3 × 4 row-major projection of loom mm (x right, y up, z towards the weaver) to undistorted photo px. With no turn the
 * camera looks straight down on an upright loom: x to the right of the picture, y up it. A mirrored picture shows x
 * the other way.
 */
export function cameraProjection(camera: Camera, size: PictureSize, mirrored: boolean): Float64Array {
  const r = rotationMatrix(camera.turn);
  const focal = Math.exp(camera.logFocal);
  const distance = Math.exp(camera.logDistance);
  const cx = (size.width - 1) / 2;
  const cy = (size.height - 1) / 2;
  const side = mirrored ? -1 : 1;
  // Camera axes: x right, y down, z away from the camera. Upright loom: (x, −y, −z) + distance along z.
  const p = new Float64Array(12);
  for (let axis = 0; axis < 3; axis++) {
    const m0 = r[axis * 3]! * side;
    const m1 = -r[axis * 3 + 1]!;
    const m2 = -r[axis * 3 + 2]!;
    p[axis * 4] = m0;
    p[axis * 4 + 1] = m1;
    p[axis * 4 + 2] = m2;
    p[axis * 4 + 3] = -(m0 * camera.aimX + m1 * camera.aimY) + (axis === 2 ? distance : 0);
  }
  for (let column = 0; column < 4; column++) {
    const depth = p[8 + column]!;
    p[column] = focal * p[column]! + cx * depth;
    p[4 + column] = focal * p[4 + column]! + cy * depth;
  }
  return p;
}

/** The part of a projection that carries the plane `z` mm above the strings' (0: their own): 3 × 3 row-major. */
export const planeHomography = (projection: Float64Array, z = 0): Float64Array =>
  Float64Array.of(
    projection[0]!,
    projection[1]!,
    projection[2]! * z + projection[3]!,
    projection[4]!,
    projection[5]!,
    projection[6]! * z + projection[7]!,
    projection[8]!,
    projection[9]!,
    projection[10]! * z + projection[11]!,
  );

/** Puts the lens in: undistorted px to px of the photograph. */
export function distort(lens: Lens, x: number, y: number): { x: number; y: number } {
  const dx = x - lens.centreX;
  const dy = y - lens.centreY;
  const r2 = (dx * dx + dy * dy) / (lens.halfDiagonal * lens.halfDiagonal);
  const stretch = 1 + lens.k1 * r2 + lens.k2 * r2 * r2;
  return { x: lens.centreX + dx * stretch, y: lens.centreY + dy * stretch };
}

/** Takes the lens out, by Newton's method on the radius. */
export function undistort(lens: Lens, x: number, y: number): { x: number; y: number } {
  const dx = x - lens.centreX;
  const dy = y - lens.centreY;
  const seen = Math.hypot(dx, dy) / lens.halfDiagonal;
  if (seen < 1e-12) return { x, y };
  let r = seen;
  for (let step = 0; step < 6; step++) {
    const r2 = r * r;
    r -= (r * (1 + lens.k1 * r2 + lens.k2 * r2 * r2) - seen) / (1 + 3 * lens.k1 * r2 + 5 * lens.k2 * r2 * r2);
  }
  return { x: lens.centreX + (dx * r) / seen, y: lens.centreY + (dy * r) / seen };
}

/** A loom point, z above the string plane towards the weaver, to photo px. */
export function projectPoint(
  projection: Float64Array,
  lens: Lens,
  x: number,
  y: number,
  z: number,
): { x: number; y: number } {
  const p = projection;
  const w = p[8]! * x + p[9]! * y + p[10]! * z + p[11]!;
  const u = (p[0]! * x + p[1]! * y + p[2]! * z + p[3]!) / w;
  const v = (p[4]! * x + p[5]! * y + p[6]! * z + p[7]!) / w;
  return distort(lens, u, v);
}
