import type { LoomPose } from './loomPose.ts';

/** Where the camera is, in the loom frame, mm. */
export interface CameraOver {
  /** The foot of the camera on the strings' plane. */
  readonly x: number;
  readonly y: number;
  /** How high it is above that plane. */
  readonly height: number;
}

/**
 * Where the camera that took a photograph was: the plane's picture is K [r1 r2 t] up to scale, with K of square pixels
 * about the lens's middle, r1 and r2 two columns of a rotation. Hartley and Zisserman, Multiple View Geometry, 8.1.
 */
export function cameraOver(pose: Pick<LoomPose, 'homography' | 'lens' | 'focal'>): CameraOver {
  const { homography: h, lens, focal } = pose;
  const column = (k: number): [number, number, number] => [
    (h[k]! - lens.centreX * h[6 + k]!) / focal,
    (h[3 + k]! - lens.centreY * h[6 + k]!) / focal,
    h[6 + k]!,
  ];
  const [a, b, t] = [column(0), column(1), column(2)];
  // A focal length that isn't quite right makes the two lengths differ a little: their mean is the scale.
  const scale = Math.sqrt(Math.hypot(...a) * Math.hypot(...b));
  const normal = cross(a, b).map((value) => value / scale ** 2) as [number, number, number];
  const dot = (p: readonly number[], q: readonly number[]) => p[0]! * q[0]! + p[1]! * q[1]! + p[2]! * q[2]!;
  return {
    x: -dot(a, t) / scale ** 2,
    y: -dot(b, t) / scale ** 2,
    height: Math.abs(dot(normal, t)) / scale,
  };
}

function cross(a: readonly number[], b: readonly number[]): [number, number, number] {
  return [a[1]! * b[2]! - a[2]! * b[1]!, a[2]! * b[0]! - a[0]! * b[2]!, a[0]! * b[1]! - a[1]! * b[0]!];
}
