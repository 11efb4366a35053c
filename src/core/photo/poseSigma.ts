import { type Camera, cameraSteps, cameraToVector, type PictureSize } from './camera.ts';
import { mapOf } from './firstLook.ts';
import type { LoomPose } from './loomPose.ts';
import { toLoom } from './loomPose.ts';
import { poseOf } from './poseFit.ts';

/**
 * Standard uncertainty of where a pose puts a loom point, from the covariance of the camera: how far the point moves
 * when the camera moves, propagated to first order (JCGM 100:2008, 5.2.2), and a floor for what the fit can't see.
 * @param covariance `size` × `size`, camera parameters first.
 * @param floor mm along x and y that all readings share whatever the fit says: light from one side moves every string's
 * seen middle alike, rounded edges are never quite alike.
 */
export function sharedSigmaOf(
  camera: Camera,
  covariance: Float64Array,
  size: number,
  photo: PictureSize,
  mirrored: boolean,
  floor: { readonly x: number; readonly y: number },
): LoomPose['sharedSigma'] {
  const vector = cameraToVector(camera);
  const map = mapOf(camera, photo, mirrored);
  const moved = cameraSteps.map((step, i) => {
    const next = vector.slice();
    next[i]! += step;
    return poseOf(next, photo, mirrored);
  });
  return (x, y) => {
    const seen = map(x, y);
    const gradient = moved.map((pose, i) => {
      const place = toLoom(pose, seen.x, seen.y);
      return { x: (place.x - x) / cameraSteps[i]!, y: (place.y - y) / cameraSteps[i]! };
    });
    let xx = floor.x * floor.x;
    let yy = floor.y * floor.y;
    for (let i = 0; i < gradient.length; i++) {
      for (let j = 0; j < gradient.length; j++) {
        xx += gradient[i]!.x * covariance[i * size + j]! * gradient[j]!.x;
        yy += gradient[i]!.y * covariance[i * size + j]! * gradient[j]!.y;
      }
    }
    return { x: Math.sqrt(Math.max(floor.x ** 2, xx)), y: Math.sqrt(Math.max(floor.y ** 2, yy)) };
  };
}
