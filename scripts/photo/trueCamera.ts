import { readFileSync } from 'node:fs';
import type { PictureSize } from '../../src/core/photo/camera.ts';

/** Where the renderer's camera put loom millimetres (x from the opening's middle) in the finished photograph, px with whole-number centres. */
export function trueLoomToPhoto(
  truthFile: string,
  briefFile: string,
  size: PictureSize,
): { map: (x: number, y: number, z?: number) => { x: number; y: number }; focal: number; k1: number } {
  const truth = JSON.parse(readFileSync(truthFile, 'utf8'));
  const brief = JSON.parse(readFileSync(briefFile, 'utf8'));
  const c = truth.camera;
  void brief;
  const pitch = (c.pitch * Math.PI) / 180;
  const yaw = (c.yaw * Math.PI) / 180;
  const roll = (c.roll * Math.PI) / 180;
  const focal = (c.lens / 36) * Math.max(size.width, size.height);
  // The renderer turns about x, then about y.
  const direction = [Math.sin(yaw) * Math.cos(pitch), -Math.sin(pitch), Math.cos(yaw) * Math.cos(pitch)];
  const z = direction;
  const up = [0 - z[0]! * z[1]!, 1 - z[1]! * z[1]!, 0 - z[2]! * z[1]!];
  const length = Math.hypot(...up);
  const y0 = up.map((value) => value / length);
  const x0 = [y0[1]! * z[2]! - y0[2]! * z[1]!, y0[2]! * z[0]! - y0[0]! * z[2]!, y0[0]! * z[1]! - y0[1]! * z[0]!];
  const xc = x0.map((value, k) => value * Math.cos(roll) + y0[k]! * Math.sin(roll));
  const yc = x0.map((value, k) => -value * Math.sin(roll) + y0[k]! * Math.cos(roll));
  const eye = c.target.map((value: number, k: number) => value + direction[k]! * c.dist);
  const k1 = truth.lens_k1;
  const half = Math.hypot(size.width, size.height) / 2;
  return {
    focal,
    k1,
    map: (x, y, z0 = 0) => {
      const d = [x - eye[0], y - eye[1], z0 - eye[2]];
      const dot = (a: number[]) => a[0]! * d[0]! + a[1]! * d[1]! + a[2]! * d[2]!;
      const depth = -dot(z);
      const u = size.width / 2 + (focal * dot(xc)) / depth - 0.5;
      const v = size.height / 2 - (focal * dot(yc)) / depth - 0.5;
      // The finished picture takes radius r from the render's radius r (1 + k1 r²), about (w/2, h/2).
      const dx = u - size.width / 2;
      const dy = v - size.height / 2;
      const want = Math.hypot(dx, dy) / half;
      let r = want;
      for (let step = 0; step < 10; step++) r -= (r * (1 + k1 * r * r) - want) / (1 + 3 * k1 * r * r);
      const shrink = want > 0 ? r / want : 1;
      return { x: size.width / 2 + dx * shrink, y: size.height / 2 + dy * shrink };
    },
  };
}
