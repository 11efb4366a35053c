import { smoothNoise } from '../noise.ts';
import { type Camera, loomCamera } from './camera.ts';
import { type Floats, floats } from './floats.ts';
import { loomFrame } from './frame.ts';
import { groundPainter } from './ground.ts';
import { looseEnds } from './loose.ts';
import type { LoomScene } from './scene.ts';
import { placed, thingColour, thingDistance } from './things.ts';
import { plannedYarn, type Weave, weave } from './weave.ts';

export interface Painted {
  readonly weave: Weave;
  readonly cloth: Floats;
  readonly camera: Camera;
  /** Three numbers a pixel, 0..255 and beyond, before blur and noise. */
  readonly pixels: Float32Array;
}

/** Where within a pixel its samples lie: a turned square, so that upright edges get four steps. */
const SAMPLES: readonly (readonly [number, number])[] = [
  [0.375, 0.125],
  [0.875, 0.375],
  [0.125, 0.625],
  [0.625, 0.875],
];
const TWO_SAMPLES: readonly (readonly [number, number])[] = [
  [0.25, 0.3],
  [0.75, 0.7],
];

/** Paints a scene by one ray a sample through flat layers: things, tails, cloth, strings, frame, card, ground. */
export function paint(scene: LoomScene): Painted {
  const { width, height, warp, loom, light } = scene;
  const woven = weave(scene);
  const cloth = floats(woven);
  const camera = loomCamera(scene);
  const frame = loomFrame(scene);
  const ground = groundPainter(scene.ground);
  const loose = looseEnds(woven);
  const hit = { yarn: -1, height: 0, lean: 0, mark: 0 };
  const missing = new Set(warp.missing);
  const crossed = new Set(warp.crossed);
  const H = loom.openingHeight;
  const groundZ = frame.face - loom.depth - scene.gap;
  const holdEnd = loom.holds === 'saw-cuts' ? loom.bar - 1 : loom.holds === 'nails' ? 5 : 6;
  const radius = warp.diameter / 2;
  const mostFell = Math.max(...woven.fell);
  const cardLeft = woven.stringX(0, 10) - 7;
  const cardRight = woven.stringX(woven.ends - 1, 10) + 7;
  const marks = new Map<number, number[]>();
  if (warp.marked)
    for (let end = 0; end < woven.ends; end++) {
      const x = woven.notchX[end]! - woven.centreX;
      const heights: number[] = [];
      for (let y = woven.fell[end]! + 3; y < scene.cloth.height; y += 0.5)
        if (plannedYarn(scene.cloth, x, y) !== plannedYarn(scene.cloth, x, y + 0.5)) heights.push(scene.cloth.base + y);
      marks.set(end, heights);
    }

  /** Signed place across the nearest string, −1..1 over its breadth; 9 where there is none. */
  const acrossString = (x: number, y: number): number => {
    if (y < -holdEnd || y > H + holdEnd) return 9;
    const end = cloth.nearestEnd(x, y);
    if (missing.has(end)) return 9;
    const centre = cloth.xAt(end, Math.max(0, Math.min(H, y)));
    if (warp.strings === 1) return (x - centre) / radius;
    const apart = warp.apart * (crossed.has(end) ? Math.cos((y / H) * Math.PI * 3) : 1);
    const a = (x - centre - apart) / radius;
    const b = (x - centre + apart) / radius;
    return Math.abs(a) < Math.abs(b) ? a : b;
  };
  /** Share of the light that strings, cloth and frame take away from a place below them. */
  const shadow = (x: number, y: number, z: number, withFrame: boolean): number => {
    const sx = x - light.x * z;
    const sy = y - light.y * z;
    const soft = Math.max(0.05, -z * light.softness);
    let taken = 0;
    const across = acrossString(sx, sy);
    if (across < 8) {
      const edge = (1 - Math.abs(across)) * radius;
      taken = Math.max(0, Math.min(1, 0.5 + edge / soft)) * Math.min(1, (radius * 2.2) / soft);
    }
    if (sy < scene.cloth.base + mostFell + 2 && cloth.at(sx, sy, hit)) taken = 1;
    if (withFrame && taken < 1) {
      const depth = frame.face - z;
      if (frame.over(x + light.x * depth, y + light.y * depth)) taken = 1;
    }
    return taken;
  };
  const darken = (out: Float64Array, share: number): void => {
    const level = 1 - light.strength * share;
    out[0] = out[0]! * level;
    out[1] = out[1]! * level;
    out[2] = out[2]! * level;
  };
  const things = scene.things.map(placed);
  const thingShadow = (x: number, y: number, z: number): number => {
    let taken = 0;
    for (const thing of things) {
      const rise = thing.z - z;
      if (rise <= 0) continue;
      const soft = Math.max(1, rise * light.softness * 4);
      const distance = thingDistance(thing, x + light.x * rise, y + light.y * rise, soft / 2);
      taken = Math.max(taken, Math.max(0, Math.min(1, 0.5 - distance / soft)));
    }
    return taken;
  };

  const sample = (ray: Float64Array, out: Float64Array): void => {
    for (const thing of things) {
      const x = ray[0]! + ray[2]! * thing.z;
      const y = ray[1]! + ray[3]! * thing.z;
      if (thing.z < 0) continue;
      const distance = thingDistance(thing, x, y, 0);
      if (distance < 0) {
        thingColour(thing, x, y, distance, out);
        return;
      }
    }
    if (frame.holder(ray, out)) return;
    const x = ray[0]!;
    const y = ray[1]!;
    const looseYarn = loose.yarnAt(x, y);
    if (looseYarn > 0) {
      const colour = scene.cloth.yarns[looseYarn - 1]!;
      const level = loose.lightAt(x, y);
      for (let channel = 0; channel < 3; channel++) out[channel] = colour[channel]! * level;
      darken(out, thingShadow(x, y, 0));
      return;
    }
    if (y > scene.cloth.base - 8 && y < scene.cloth.base + mostFell + 2) {
      if (cloth.at(x, y, hit)) {
        const colour = scene.cloth.yarns[hit.yarn]!;
        const twist = Math.sin(x * 5.2 + y * 4.1 + hit.mark * 9);
        const fuzz = smoothNoise(x * 3.1, y * 3.1, scene.seed);
        const level =
          (0.42 + 0.58 * hit.height) *
          (1 - 0.16 * hit.lean * -light.y) *
          (0.86 + 0.07 * twist + 0.18 * fuzz) *
          (0.96 + 0.08 * hit.mark);
        for (let channel = 0; channel < 3; channel++) out[channel] = colour[channel]! * level;
        darken(out, thingShadow(x, y, 0));
        return;
      }
      if (twining(x, y, out)) return;
    }
    const across = acrossString(x, y);
    if (Math.abs(across) <= 1) {
      const end = cloth.nearestEnd(x, y);
      const round = Math.sqrt(1 - across * across);
      const twist = Math.sin((y / warp.diameter) * 2.4 + across * 1.6);
      let level = (0.5 + 0.5 * round) * (1 - 0.2 * across * -light.x) * (0.92 + 0.08 * twist);
      if (marks.get(end)?.some((at) => Math.abs(at - y) < 1.3)) level *= 0.12;
      for (let channel = 0; channel < 3; channel++) out[channel] = warp.colour[channel]! * level;
      darken(out, thingShadow(x, y, 0));
      return;
    }
    if (frame.paint(ray, out)) {
      const fx = x + ray[2]! * frame.face;
      const fy = y + ray[3]! * frame.face;
      darken(out, Math.max(0.8 * shadow(fx, fy, frame.face, false), thingShadow(fx, fy, frame.face)));
      return;
    }
    const cardZ = -radius - 1;
    const cx = x + ray[2]! * cardZ;
    const cy = y + ray[3]! * cardZ;
    if (scene.cloth.cardboard && cy > 3 && cy < scene.cloth.base - 5 && cx > cardLeft && cx < cardRight) {
      for (let channel = 0; channel < 3; channel++) out[channel] = scene.cloth.cardboard[channel]! * 0.95;
      darken(out, shadow(cx, cy, cardZ, false));
      return;
    }
    const gx = x + ray[2]! * groundZ;
    const gy = y + ray[3]! * groundZ;
    for (const thing of things) {
      if (thing.z >= 0) continue;
      const distance = thingDistance(thing, gx, gy, 0);
      if (distance < 0) {
        thingColour(thing, gx, gy, distance, out);
        darken(out, shadow(gx, gy, groundZ, true));
        return;
      }
    }
    ground(gx, gy, out);
    darken(out, Math.max(shadow(gx, gy, groundZ, true), thingShadow(gx, gy, groundZ)));
  };
  /** One or two rows of slanted turns under the cloth. */
  const twining = (x: number, y: number, out: Float64Array): boolean => {
    const rowHeight = scene.cloth.pass * 1.7;
    const below = scene.cloth.base - y;
    if (below < 0 || below > rowHeight * scene.cloth.twining) return false;
    const row = Math.floor(below / rowHeight);
    const end = cloth.nearestEnd(x, y);
    const dx = x - cloth.xAt(end, y) + (row % 2 ? -1 : 1) * (below - (row + 0.5) * rowHeight) * 0.5;
    const dy = (below - (row + 0.5) * rowHeight) / (rowHeight * 0.55);
    const room = 1 - (dx / (loom.pitch * 0.56)) ** 2 - dy * dy;
    if (room <= 0) return false;
    const colour = scene.cloth.yarns[scene.cloth.headerYarn]!;
    const level = (0.5 + 0.45 * Math.sqrt(room)) * (0.9 + 0.2 * smoothNoise(x * 3, y * 3, 5));
    for (let channel = 0; channel < 3; channel++) out[channel] = colour[channel]! * level;
    return true;
  };

  const pixels = new Float32Array(width * height * 3);
  const ray = new Float64Array(4);
  const out = new Float64Array(3);
  const samples = width * height > 5_000_000 ? TWO_SAMPLES : SAMPLES;
  const share = 1 / samples.length;
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const at = (row * width + column) * 3;
      for (const [sx, sy] of samples) {
        camera.ray(column + sx, row + sy, ray);
        sample(ray, out);
        pixels[at] = pixels[at]! + out[0]! * share;
        pixels[at + 1] = pixels[at + 1]! + out[1]! * share;
        pixels[at + 2] = pixels[at + 2]! + out[2]! * share;
      }
    }
  return { weave: woven, cloth, camera, pixels };
}
