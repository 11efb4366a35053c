import { smoothNoise } from '../noise.ts';
import type { LyingThing } from './scene.ts';

function capsule(u: number, v: number, u0: number, v0: number, u1: number, v1: number, radius: number): number {
  const du = u1 - u0;
  const dv = v1 - v0;
  const share = Math.max(0, Math.min(1, ((u - u0) * du + (v - v0) * dv) / (du * du + dv * dv)));
  return Math.hypot(u - u0 - du * share, v - v0 - dv * share) - radius;
}

function slab(u: number, v: number, halfU: number, halfV: number, corner: number): number {
  const du = Math.abs(u) - halfU + corner;
  const dv = Math.abs(v) - halfV + corner;
  return Math.hypot(Math.max(du, 0), Math.max(dv, 0)) + Math.min(Math.max(du, dv), 0) - corner;
}

/** Distance in mm from a thing's outline at its own place (u along it, v to its left): negative inside. */
function outline(thing: LyingThing, u: number, v: number): number {
  const s = thing.size;
  switch (thing.kind) {
    case 'hand': {
      let fingers = Number.POSITIVE_INFINITY;
      for (let k = -1.5; k <= 1.5; k++) {
        const length = 0.62 - 0.07 * Math.abs(k + 0.5);
        fingers = Math.min(fingers, capsule(u, v, -0.1 * s, k * 0.15 * s, length * s, k * 0.19 * s, 0.068 * s));
      }
      const thumb = capsule(u, v, -0.35 * s, 0.2 * s, 0.1 * s, 0.5 * s, 0.085 * s);
      const palm = capsule(u, v, -0.5 * s, 0, -0.2 * s, 0, 0.33 * s);
      const arm = capsule(u, v, -3.5 * s, 0, -0.5 * s, 0, 0.24 * s);
      return Math.min(fingers, thumb, palm, arm);
    }
    case 'comb': {
      const body = slab(u + 0.2 * s, v, 0.35 * s, 0.28 * s, 4);
      const pitch = 0.07 * s;
      const across = v - pitch * Math.round(v / pitch);
      const tooth = Math.abs(v) < 0.27 * s ? slab(u - 0.3 * s, across, 0.2 * s, 0.018 * s, 0.5) : 99;
      return Math.min(body, tooth);
    }
    case 'butterfly':
      return Math.min(
        capsule(u, v, -0.45 * s, 0.1 * s, 0.45 * s, -0.1 * s, 0.09 * s),
        capsule(u, v, -0.45 * s, -0.1 * s, 0.45 * s, 0.1 * s, 0.09 * s),
      );
    case 'scissors':
      return Math.min(
        capsule(u, v, -0.2 * s, 0.06 * s, 0.6 * s, -0.04 * s, 0.025 * s),
        capsule(u, v, -0.2 * s, -0.06 * s, 0.6 * s, 0.04 * s, 0.025 * s),
        Math.abs(Math.hypot(u + 0.35 * s, v - 0.14 * s) - 0.12 * s) - 0.03 * s,
        Math.abs(Math.hypot(u + 0.35 * s, v + 0.14 * s) - 0.12 * s) - 0.03 * s,
      );
    case 'card':
      // ISO/IEC 7810 ID-1: 85.60 × 53.98 mm, corner radius 3.18 mm.
      return slab(u, v, 42.8, 26.99, 3.18);
    case 'stick':
      return slab(u, v, 0.5 * s, 0.045 * s, 0.045 * s);
    case 'ruler':
      return slab(u, v, 0.5 * s, 14, 1);
    case 'cup':
      return Math.hypot(u, v) - 0.5 * s;
  }
}

/** A box about a thing at its own place, mm: from u to u, from v to v. */
function boxAbout({ kind, size: s }: LyingThing): readonly [number, number, number, number] {
  switch (kind) {
    case 'hand':
      return [-3.75 * s, 0.7 * s, -0.37 * s, 0.6 * s];
    case 'comb':
      return [-0.56 * s, 0.51 * s, -0.31 * s, 0.31 * s];
    case 'butterfly':
      return [-0.55 * s, 0.55 * s, -0.2 * s, 0.2 * s];
    case 'scissors':
      return [-0.51 * s, 0.64 * s, -0.3 * s, 0.3 * s];
    case 'card':
      return [-43, 43, -27, 27];
    case 'stick':
      return [-0.51 * s, 0.51 * s, -0.06 * s, 0.06 * s];
    case 'ruler':
      return [-0.5 * s, 0.5 * s, -14, 14];
    case 'cup':
      return [-0.51 * s, 0.51 * s, -0.51 * s, 0.51 * s];
  }
}

/** A thing with what is the same for every place that is asked about. */
export interface PlacedThing extends LyingThing {
  readonly cos: number;
  readonly sin: number;
  readonly box: ReturnType<typeof boxAbout>;
}

export const placed = (thing: LyingThing): PlacedThing => ({
  ...thing,
  cos: Math.cos(thing.turn),
  sin: Math.sin(thing.turn),
  box: boxAbout(thing),
});

/** How far a place lies from the box about a thing, mm; 0 inside. Never farther than from its outline. */
function fromBox({ box }: PlacedThing, u: number, v: number): number {
  const du = Math.max(box[0] - u, 0, u - box[1]);
  const dv = Math.max(box[2] - v, 0, v - box[3]);
  return Math.sqrt(du * du + dv * dv);
}

/** Whether a thing lies over a place, or within a margin of it; loom mm. */
export function covers(thing: PlacedThing, x: number, y: number, margin: number): boolean {
  return thing.z >= 0 && thingDistance(thing, x, y, margin) < margin;
}

/** A place along a thing and to its left. */
const along = ({ x, y, cos, sin }: PlacedThing, atX: number, atY: number): number => (atX - x) * cos + (atY - y) * sin;
const aside = ({ x, y, cos, sin }: PlacedThing, atX: number, atY: number): number => (atY - y) * cos - (atX - x) * sin;

/**
 * Distance in mm from a thing's outline at a place of its plane: negative inside.
 * @param far from which on only that it is no less than this counts.
 */
export function thingDistance(thing: PlacedThing, x: number, y: number, far: number): number {
  const u = along(thing, x, y);
  const v = aside(thing, x, y);
  const least = fromBox(thing, u, v);
  return least > far ? least : outline(thing, u, v);
}

/** Paints a thing's face at a place of its plane into `out`. */
export function thingColour(thing: PlacedThing, x: number, y: number, distance: number, out: Float64Array): void {
  const u = along(thing, x, y);
  const v = aside(thing, x, y);
  const round =
    thing.kind === 'hand' || thing.kind === 'butterfly' || thing.kind === 'stick' ? Math.min(1, -distance / 7) : 1;
  let shade = 0.62 + 0.38 * Math.sqrt(round) + 0.08 * (smoothNoise(x / 6, y / 6, 7) - 0.5);
  if (thing.kind === 'butterfly') shade *= 0.85 + 0.15 * Math.sin(u * 1.3 + v * 3);
  if (thing.kind === 'comb' || thing.kind === 'stick') shade *= 0.92 + 0.12 * smoothNoise(u / 30, v / 1.5, 9);
  if (thing.kind === 'ruler') {
    const line = Math.abs(u - Math.round(u));
    const long = Math.round(u) % 10 === 0 ? 9 : Math.round(u) % 5 === 0 ? 6 : 4;
    if (line < 0.13 && v > 14 - long && v < 13.6) shade *= 0.25;
  }
  if (thing.kind === 'card' && v > 12 && v < 20) shade *= 0.45;
  if (thing.kind === 'cup') {
    const rim = -distance;
    if (rim > 4) shade *= 0.35;
  }
  for (let channel = 0; channel < 3; channel++) out[channel] = thing.colour[channel]! * shade;
}
