import type { FloatScale } from './beat.ts';
import { cameraOver } from './cameraOver.ts';
import type { ClothFrame } from './clothFrame.ts';
import type { LoomPose } from './loomPose.ts';

/**
 * Floats lie nearer to the camera than the strings, about half a string above them and, the dark between floats lying
 * lower than their crests, half a weft thickness (a pass): they look larger, and farther from the camera's foot.
 */
export function floatScale(frame: ClothFrame, pose: LoomPose): FloatScale {
  const string = frame.stringsPerEnd === 2 ? frame.endHalf / 1.05 : frame.endHalf * 2;
  const camera = cameraOver(pose);
  const enlarged = (string / 2 + frame.planPass) / camera.height;
  return {
    enlarged,
    baseAt: enlarged * (frame.baseY - camera.y),
    footX: camera.x - frame.centreX,
    scaleSigma: pose.reference.scaleSigma,
  };
}
