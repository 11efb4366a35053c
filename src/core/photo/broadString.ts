import { apartInAnyLight } from './anyLight.ts';
import type { ClothFrame } from './clothFrame.ts';
import type { LoomSampler } from './sampleLoom.ts';
import { median } from './statistics.ts';

/** Colour steps by which a string must stand out from what lies beside it. */
const FEWEST_STEPS = 14;
/** A float reaches this share of the pitch to either side of its end, where no neighbour's is in the way. */
const FLOAT = 0.4;
/** Beyond this share of the pitch it isn't a float that goes on but the table, which has the string's colour there. */
const ENDS = 0.56;
/** From this share of the pitch on, beside an end whose neighbour is lower, the table is seen. */
const BESIDE = 0.5;
/** What is half of the way from a string's breadth to a float's, or more, is a float, if no side is much less. */
const BROAD = 0.5;
const LEAST_WAY = 0.25;
/** So many pixels a float must be broader than a string, on one side, to be told from it. */
const FEWEST_PIXELS = 2.5;
/** In the shade of the cloth a string may be so much darker, and its colour so many steps off. */
const DARKEST = 0.6;
const LIGHTEST = 1.15;
const ALIKE = 30;
/** What lies farther from the string's colour than this share of what the table does isn't string. */
const OFF_CORE = 0.6;
/** Heights near the notch at which the bare string's breadth is learnt, mm below the bar. */
const LEARNT_FROM = 5;
const LEARNT_TO = 30;

interface Look {
  /** How far from the end's middle its colour goes, mm. */
  readonly half: number;
  readonly core: readonly [number, number, number];
}

/**
 * Floats of the string's own colour on an end that stands alone look like a bare string, only too broad.
 * @param course loom x of the end at a loom y.
 * @param y cloth height from which up the end seems bare, mm.
 * @param sides those on which no neighbour is woven higher.
 * @returns the height up to which what seems bare is too broad for a string: `y` itself where it isn't, or can't be told.
 */
export function broadUpTo(
  sampler: LoomSampler,
  frame: ClothFrame,
  course: (loomY: number) => number,
  y: number,
  sides: readonly ('left' | 'right')[],
): number {
  const pass = frame.planPass;
  const notchY = frame.openingHeight - frame.baseY;
  if (sides.length === 0 || y > notchY - LEARNT_TO - 4 * pass) return y;
  const usual = sides.map((side) => {
    const looks: Look[] = [];
    for (let d = LEARNT_FROM; d <= LEARNT_TO; d += 1.5) {
      const look = breadthAt(sampler, frame, course, notchY - d, side);
      if (look) looks.push(look);
    }
    if (looks.length < 6) return null;
    const core = [0, 1, 2].map((c) => median(looks.map((look) => look.core[c]!)));
    return { half: median(looks.map((look) => look.half)), core };
  });
  // How far every side is on the way from a string's breadth to a float's: the end may lie a little aside.
  const broad = (at: number): boolean => {
    let sum = 0;
    for (const [i, side] of sides.entries()) {
      const known = usual[i];
      const look = known && breadthAt(sampler, frame, course, at, side);
      if (!look || look.half > ENDS * frame.pitch) return false;
      if (apartInAnyLight(look.core, known.core, DARKEST, LIGHTEST) > ALIKE) return false;
      const more = FLOAT * frame.pitch - known.half;
      const way = more > FEWEST_PIXELS * frame.mmPerPx ? (look.half - known.half) / more : 0;
      if (way < LEAST_WAY) return false;
      sum += Math.min(1, way);
    }
    return sum / sides.length > BROAD;
  };
  const share = (from: number, to: number): number => {
    let seen = 0;
    let n = 0;
    for (let at = from; at <= to; at += 0.25 * pass) {
      n++;
      if (broad(at)) seen++;
    }
    return seen / n;
  };
  if (share(y + 0.2 * pass, y + 1.7 * pass) < 0.7) return y;
  let top = y + 1.7 * pass;
  while (top < notchY - LEARNT_TO && share(top, top + pass) > 0.5) top += 0.25 * pass;
  return top;
}

/** How far from its middle an end's own colour goes on one side; null where it hardly differs from what lies beside it. */
function breadthAt(
  sampler: LoomSampler,
  frame: ClothFrame,
  course: (loomY: number) => number,
  y: number,
  side: 'left' | 'right',
): Look | null {
  const sign = side === 'left' ? -1 : 1;
  const step = 0.5 * frame.mmPerPx;
  const outerTo = frame.pitch - frame.endHalf - 2 * frame.mmPerPx;
  if (outerTo < BESIDE * frame.pitch + 2 * frame.mmPerPx) return null;
  const columns = Math.floor(outerTo / step);
  const colours = new Float32Array(columns * 3);
  const place = new Float32Array(3);
  for (const off of [-0.2, 0, 0.2]) {
    const at = y + off * frame.planPass;
    const x = course(at + frame.baseY);
    for (let k = 0; k < columns; k++) {
      if (!sampler.read(x + sign * k * step, at + frame.baseY, place, 0)) return null;
      for (let c = 0; c < 3; c++) colours[3 * k + c]! += place[c]! / 3;
    }
  }
  const mean = (from: number, to: number): [number, number, number] => {
    const sum: [number, number, number] = [0, 0, 0];
    const low = Math.floor(from / step);
    const high = Math.min(columns, Math.max(low + 1, Math.floor(to / step)));
    for (let k = low; k < high; k++) for (let c = 0; c < 3; c++) sum[c]! += colours[3 * k + c]! / (high - low);
    return sum;
  };
  const core = mean(0, 0.6 * frame.endHalf);
  const beside = mean(BESIDE * frame.pitch, outerTo);
  const way = core.map((value, c) => value - beside[c]!);
  const power = way.reduce((sum, value) => sum + value * value, 0);
  if (power < FEWEST_STEPS ** 2) return null;
  for (let k = Math.floor((0.6 * frame.endHalf) / step); k < columns; k++) {
    const share = way.reduce((sum, value, c) => sum + value * (colours[3 * k + c]! - beside[c]!), 0) / power;
    // A stripe of a third colour beside the string may lie on its side of the way and is no string all the same.
    const off = apartInAnyLight(colours.subarray(3 * k, 3 * k + 3), core, DARKEST, LIGHTEST);
    if (share < 0.5 || off > OFF_CORE * Math.sqrt(power)) return { half: k * step, core };
  }
  return { half: outerTo, core };
}
