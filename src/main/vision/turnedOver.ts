import type { VisionRequest } from './visionRequest.ts';

type Said = Pick<Extract<VisionRequest, { kind: 'measure' }>, 'mirrored' | 'cameras'>;

/** Whether pictures by a camera are turned over, as the weaver said; undefined where nothing was said. */
export const turnsOver = (cameras: Said['cameras'], camera: string | null): boolean | undefined =>
  cameras.find(({ name }) => name === camera)?.mirrors;

/**
 * Whether a picture is turned over, by what was said of it or else of its camera. Pictures that name no camera may be by
 * several: what was said of one is only likely of the next.
 */
export function turnedOver(
  { mirrored, cameras }: Said,
  camera: string | null,
): { readonly mirrored?: boolean; readonly mirroredLikely?: boolean } {
  const turned = mirrored ?? turnsOver(cameras, camera);
  return turned === undefined ? {} : { mirrored: turned, mirroredLikely: mirrored === null && camera === null };
}
