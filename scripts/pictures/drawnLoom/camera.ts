import type { LoomScene } from './scene.ts';

/** As much of a scene as placing a camera needs. */
export interface CameraScene {
  readonly width: number;
  readonly height: number;
  readonly camera: LoomScene['camera'];
  readonly loom: Pick<LoomScene['loom'], 'openingWidth' | 'openingHeight' | 'bar' | 'sideBar'>;
}

/** A pinhole above the loom, with the lens' bend added after. Picture coordinates as displayed, pixel edges whole. */
export interface Camera {
  /**
   * Where the ray of a pixel meets the strings' plane, and how far it moves per mm of height:
   * out = [x, y, dx/dz, dy/dz].
   */
  readonly ray: (px: number, py: number, out: Float64Array) => void;
  /** Where a point in loom mm is seen. */
  readonly seen: (x: number, y: number, z: number) => readonly [px: number, py: number];
  /** From the eye to the point it looks at, mm. */
  readonly distance: number;
}

type Vector = readonly [number, number, number];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const unit = (a: Vector): Vector => {
  const length = Math.hypot(...a);
  return [a[0] / length, a[1] / length, a[2] / length];
};

function pinhole(scene: CameraScene, distance: number): Camera {
  const { width, height, camera, loom } = scene;
  const target: Vector = [camera.targetX, loom.openingHeight / 2 + camera.targetY, 0];
  const back = unit([
    Math.sin(camera.yaw) * Math.cos(camera.pitch),
    -Math.sin(camera.pitch),
    Math.cos(camera.yaw) * Math.cos(camera.pitch),
  ]);
  const eye: Vector = [target[0] + back[0] * distance, target[1] + back[1] * distance, target[2] + back[2] * distance];
  const right0 = unit(cross([0, 1, 0], back));
  const up0 = cross(back, right0);
  const c = Math.cos(camera.roll);
  const s = Math.sin(camera.roll);
  const right: Vector = [right0[0] * c + up0[0] * s, right0[1] * c + up0[1] * s, right0[2] * c + up0[2] * s];
  const up: Vector = [up0[0] * c - right0[0] * s, up0[1] * c - right0[1] * s, up0[2] * c - right0[2] * s];
  const focal = camera.focal * Math.max(width, height);
  const middleX = width / 2;
  const middleY = height / 2;
  const halfDiagonal = Math.hypot(width, height) / 2;
  const { k1, k2 } = camera;
  return {
    distance,
    ray: (px, py, out) => {
      const qx = (px - middleX) / halfDiagonal;
      const qy = (py - middleY) / halfDiagonal;
      const r2 = qx * qx + qy * qy;
      const stretch = ((1 + r2 * (k1 + k2 * r2)) * halfDiagonal) / focal;
      const a = qx * stretch;
      const b = -qy * stretch;
      const dx = right[0] * a + up[0] * b - back[0];
      const dy = right[1] * a + up[1] * b - back[1];
      const dz = right[2] * a + up[2] * b - back[2];
      out[2] = dx / dz;
      out[3] = dy / dz;
      out[0] = eye[0] - eye[2] * out[2];
      out[1] = eye[1] - eye[2] * out[3];
    },
    seen: (x, y, z) => {
      const d: Vector = [x - eye[0], y - eye[1], z - eye[2]];
      const depth = -dot(d, back);
      const ux = (dot(d, right) / depth) * (focal / halfDiagonal);
      const uy = (-dot(d, up) / depth) * (focal / halfDiagonal);
      const wanted = Math.hypot(ux, uy);
      let r = wanted;
      for (let step = 0; step < 20; step++) {
        const r2 = r * r;
        r -= (r * (1 + r2 * (k1 + k2 * r2)) - wanted) / (1 + r2 * (3 * k1 + 5 * k2 * r2));
      }
      const shrink = wanted > 1e-12 ? (r / wanted) * halfDiagonal : halfDiagonal;
      return [middleX + ux * shrink, middleY + uy * shrink];
    },
  };
}

/** Stands far enough off for the whole frame to fill the picture as the scene asks. */
export function loomCamera(scene: CameraScene): Camera {
  const { loom, width, height } = scene;
  const halfX = loom.openingWidth / 2 + loom.sideBar;
  let distance = loom.openingHeight * 2;
  let camera = pinhole(scene, distance);
  for (let step = 0; step < 8; step++) {
    let most = 0;
    for (const x of [-halfX, halfX])
      for (const y of [-loom.bar, loom.openingHeight + loom.bar]) {
        const [px, py] = camera.seen(x, y, 0);
        most = Math.max(most, Math.abs(px / width - 0.5) * 2, Math.abs(py / height - 0.5) * 2);
      }
    distance *= most / (0.97 * scene.camera.fill);
    camera = pinhole(scene, distance);
  }
  return camera;
}
