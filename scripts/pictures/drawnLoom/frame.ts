import { cloudNoise, smoothNoise } from '../noise.ts';
import type { LoomScene } from './scene.ts';

/** The wooden frame seen along a ray. */
export interface Frame {
  /** Height of the bars' faces, mm above the strings' plane (negative). */
  readonly face: number;
  /** Whether wood lies over a place of the face's plane. */
  readonly over: (x: number, y: number) => boolean;
  /**
   * Paints the frame where the ray [x, y, dx/dz, dy/dz] meets it; false where it passes by.
   */
  readonly paint: (ray: Float64Array, out: Float64Array) => boolean;
  /** Paints teeth, nails or saw cuts at the bars' inner edges; true where one covers the strings. */
  readonly holder: (ray: Float64Array, out: Float64Array) => boolean;
}

export function loomFrame(scene: LoomScene): Frame {
  const { loom, warp, light } = scene;
  const halfW = loom.openingWidth / 2;
  const H = loom.openingHeight;
  const face = -warp.diameter / 2 - loom.faceBelow;
  const back = face - loom.depth;
  const [woodA, woodB] = loom.wood;
  const outerX = halfW + loom.sideBar;
  const over = (x: number, y: number): boolean =>
    Math.abs(x) <= outerX && y >= -loom.bar && y <= H + loom.bar && (Math.abs(x) > halfW || y < 0 || y > H);
  const wood = (x: number, y: number, level: number, out: Float64Array): void => {
    const across = y < 0 || y > H;
    const grain = across
      ? cloudNoise(x / 70, y / 2.2 + 2 * smoothNoise(x / 50, y / 30, 41), 31)
      : cloudNoise(y / 70, x / 2.2 + 2 * smoothNoise(y / 50, x / 30, 43), 33);
    for (let channel = 0; channel < 3; channel++)
      out[channel] = (woodA[channel]! * (1 - grain) + woodB[channel]! * grain) * level;
  };
  /** The inner edges are rounded over about a millimetre and catch less light. */
  const rounding = (x: number, y: number): number => {
    const fromBar = y < 0 ? -y : y > H ? y - H : 99;
    const fromSide = Math.abs(x) - halfW;
    const inner = Math.min(fromBar, fromSide < 0 ? 99 : fromSide);
    const outer = Math.min(outerX - Math.abs(x), y + loom.bar, H + loom.bar - y);
    const seam = Math.abs(x) > halfW && Math.min(Math.abs(y), Math.abs(y - H)) < 0.35 ? 0.55 : 1;
    return seam * (0.72 + 0.28 * Math.min(1, inner / 1.1)) * (0.8 + 0.2 * Math.min(1, outer / 1.5));
  };
  const notchShare = (x: number): number => x / loom.pitch + (loom.notches - 1) / 2;

  return {
    face,
    over,
    paint: (ray, out) => {
      const x = ray[0]! + ray[2]! * face;
      const y = ray[1]! + ray[3]! * face;
      if (over(x, y)) {
        let level = rounding(x, y);
        if (loom.holds === 'saw-cuts') {
          const k = notchShare(x);
          const deep = y < 0 ? -y : y > H ? y - H : 99;
          if (deep < 5 && Math.abs(k - Math.round(k)) * loom.pitch < 0.7 && k > -0.5 && k < loom.notches - 0.5)
            level *= 0.35;
        }
        wood(x, y, level, out);
        return true;
      }
      const xb = ray[0]! + ray[2]! * back;
      const yb = ray[1]! + ray[3]! * back;
      if (!over(xb, yb)) return false;
      // The ray goes past the face and meets wood below it: a wall of the frame, inner or outer.
      const inner = Math.abs(x) < halfW && y > 0 && y < H;
      const upDown = inner ? yb < 0 || yb > H : y < -loom.bar || y > H + loom.bar;
      const facing = upDown ? (yb > y ? -light.y : light.y) : xb > x ? -light.x : light.x;
      wood(upDown ? xb : x, upDown ? y : yb, Math.max(0.3, Math.min(0.95, 0.55 + 0.35 * facing)), out);
      return true;
    },
    holder: (ray, out) => {
      if (loom.holds === 'saw-cuts') return false;
      const z = loom.holds === 'nails' ? 3 : 2;
      const x = ray[0]! + ray[2]! * z;
      const y = ray[1]! + ray[3]! * z;
      if (y > 12 && y < H - 12) return false;
      const k = notchShare(x);
      if (k < -1 || k > loom.notches) return false;
      if (loom.holds === 'nails') {
        const away = Math.hypot((k - Math.round(k)) * loom.pitch, Math.min(Math.abs(y + 5), Math.abs(y - H - 5)));
        if (away > 1.1 || k < -0.4 || k > loom.notches - 0.6) return false;
        const level = away < 0.5 ? 235 : 150 - 60 * (away - 0.5);
        out[0] = level;
        out[1] = level;
        out[2] = level * 1.02;
        return true;
      }
      // Teeth stand between the notches.
      const fromTooth = Math.abs(k - Math.floor(k) - 0.5) * loom.pitch;
      const deep = y < H / 2 ? -y : y - H;
      if (fromTooth > loom.pitch * 0.24 || deep < 0.8 || deep > 7) return false;
      const edge = Math.min(loom.pitch * 0.24 - fromTooth, deep - 0.8, 7 - deep);
      wood(x, y < H / 2 ? -3 : H + 3, edge < 0.4 ? 0.7 : 1.08, out);
      return true;
    },
  };
}
