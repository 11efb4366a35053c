import { smoothNoise } from '../noise.ts';
import { along } from './course.ts';
import type { LoomScene } from './scene.ts';

/** Where every end and every pass really lies. Loom frame: x from the middle of the opening, y from the bar line. */
export interface Weave {
  readonly scene: LoomScene;
  readonly ends: number;
  /** x of the notches the ends hang in. */
  readonly notchX: Float64Array;
  /** Mean of `notchX`. */
  readonly centreX: number;
  /** Height of each pass line above the base, at the middle of the warp; one more than there are passes. */
  readonly passY: Float64Array;
  /** x of an end inside the cloth, `y` above the base. */
  readonly insideX: (end: number, y: number) => number;
  /** x of an end anywhere between the bars, `y` above the bar line. */
  readonly stringX: (end: number, y: number) => number;
  /** Real height above the base of a height measured in the middle of the warp, at x from its middle: the tilt. */
  readonly raised: (y: number, x: number) => number;
  /** How far the bare string of an end bows sideways at most, mm, positive to the right. */
  readonly bow: Float64Array;
  /** Top of the passes woven on an end, above the base. */
  readonly fell: Float64Array;
  /** Yarn of each woven cell by pass and end, −1 where nothing is woven. */
  readonly colours: readonly (readonly number[])[];
}

/** Yarn at a place of the plan: the first shape that holds it, else the ground. Cloth frame. */
export function plannedYarn(plan: Pick<LoomScene['cloth'], 'shapes' | 'ground'>, x: number, y: number): number {
  for (const shape of plan.shapes) {
    if (shape.kind === 'circle' && shape.c && shape.r) {
      if ((x - shape.c[0]) ** 2 + (y - shape.c[1]) ** 2 < shape.r ** 2) return shape.yarn;
    } else if (shape.kind === 'band' && shape.y) {
      if (shape.y[0] <= y && y < shape.y[1]) return shape.yarn;
    } else if (shape.pts) {
      let inside = false;
      for (let a = 0; a < shape.pts.length; a++) {
        const [xa, ya] = shape.pts[a]!;
        const [xb, yb] = shape.pts[(a + shape.pts.length - 1) % shape.pts.length]!;
        if (ya > y !== yb > y && x < ((xb - xa) * (y - ya)) / (yb - ya) + xa) inside = !inside;
      }
      if (inside) return shape.yarn;
    }
  }
  return plan.ground;
}

export function weave(scene: LoomScene): Weave {
  const { loom, warp, cloth, seed } = scene;
  const ends = warp.ends;
  const notchX = Float64Array.from(
    { length: ends },
    (_, end) => (-(loom.notches - 1) / 2 + warp.firstNotch + end) * loom.pitch,
  );
  const centreX = notchX.reduce((sum, x) => sum + x, 0) / ends;
  const half = (ends * loom.pitch) / 2;
  const most = Math.max(...cloth.passes) + 2;
  const passY = new Float64Array(most + 1);
  for (let pass = 0; pass < most; pass++)
    passY[pass + 1] = passY[pass]! + cloth.pass * along(cloth.beat, pass * cloth.pass);
  const top = passY[Math.max(...cloth.passes)]!;
  const raised = (y: number, x: number): number => y * (1 + (cloth.tilt * x) / (2 * half * Math.max(top, 10)));

  const insideX = (end: number, y: number): number => {
    const x0 = notchX[end]!;
    const share = (x0 - centreX) / half;
    let x = x0 + along(cloth.drawInLeft, y) * Math.max(0, -share) - along(cloth.drawInRight, y) * Math.max(0, share);
    if (cloth.spread) {
      const away = (x0 - centreX - cloth.spread[0]) / cloth.spread[1];
      x += cloth.spread[2] * away * Math.exp(-0.5 * away * away);
    }
    // No hand beats every end into the same place: the ends wander a little, slowly, up the cloth.
    return x + (smoothNoise(end * 7.3, y / 18, seed + 11) - 0.5) * loom.pitch * 0.05;
  };
  const fell = Float64Array.from({ length: ends }, (_, end) =>
    raised(passY[cloth.passes[end]!]!, notchX[end]! - centreX),
  );
  const bow = Float64Array.from({ length: ends }, (_, end) => (smoothNoise(end * 5.1, 3, seed + 5) - 0.5) * 0.4);
  for (const { end, bow: extra } of warp.slack) bow[end] = bow[end]! + extra;
  const atBase = Float64Array.from({ length: ends }, (_, end) => insideX(end, 0));
  const atFell = Float64Array.from({ length: ends }, (_, end) => insideX(end, fell[end]!));
  const hangsX = Float64Array.from(notchX);
  for (const end of warp.swapped) [hangsX[end], hangsX[end + 1]] = [notchX[end + 1]!, notchX[end]!];
  const stringX = (end: number, y: number): number => {
    const above = y - cloth.base;
    if (above <= 0) return notchX[end]! + ((atBase[end]! - notchX[end]!) * Math.max(0, y)) / cloth.base;
    if (above < fell[end]!) return insideX(end, above);
    const share = Math.min(1, (above - fell[end]!) / (loom.openingHeight - cloth.base - fell[end]!));
    return atFell[end]! + (hangsX[end]! - atFell[end]!) * share + bow[end]! * Math.sin(Math.PI * share);
  };
  const rows = Math.max(...cloth.passes);
  const colours = Array.from({ length: rows }, (_, pass) =>
    Array.from({ length: ends }, (_unused, end) => {
      if (pass >= cloth.passes[end]!) return -1;
      if (pass < cloth.header) return cloth.headerYarn;
      const turnMiddle = (2 * Math.floor(pass / 2) + 1) * cloth.pass;
      return plannedYarn(cloth, notchX[end]! - centreX, turnMiddle);
    }),
  );
  return { scene, ends, notchX, centreX, passY, insideX, stringX, raised, bow, fell, colours };
}
