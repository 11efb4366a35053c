import type { Measurement } from '../model/measurement.ts';
import type { ClothFrame } from './clothFrame.ts';
import type { LoomSampler } from './sampleLoom.ts';
import { stringBow } from './stringBow.ts';
import { EVERY, type StringLook, stringLooks } from './stringLooks.ts';

/** How far from a supposed course a look may meet the string, as a share of the pitch. */
const REACH = 0.12;
/** And never farther, mm: what is met beside a taut string must not pass for a slack one. */
const FARTHEST = 0.8;
/** Stretches of the way up, as shares: two strings that cross lie over each other in the middle one. */
const LOWER = [0.18, 0.36] as const;
const MIDDLE = [0.36, 0.64] as const;
const UPPER = [0.64, 0.82] as const;
/** Share of the looks that must meet a string on the way to another's notch, and to its own. */
const MET = 0.55;
const MET_OWN = 0.7;
/** How much of that share any other course may meet. */
const RIVAL = 0.6;
/** A stretch too short for so many looks says nothing. */
const FEWEST = 4;

/** Where the bare part of one end begins, loom mm. */
export interface LeavesCloth {
  readonly x: number;
  readonly y: number;
}

/** Looks along the straight from the cloth's edge to `toX` at the notches. */
function along(sampler: LoomSampler, frame: ClothFrame, from: LeavesCloth, toX: number): Looked {
  const topY = frame.openingHeight;
  const course = (y: number): number => from.x + ((toX - from.x) * (y - from.y)) / (topY - from.y);
  const reach = Math.min(REACH * frame.pitch, FARTHEST);
  return { looks: stringLooks(sampler, frame, course, topY - 5, from.y + 1, reach), fellY: from.y, topY };
}

/** The bow of a string that was not followed but is met all along the straight to its own notch; else null. */
export function straightString(
  sampler: LoomSampler,
  frame: ClothFrame,
  end: number,
  from: LeavesCloth,
): Measurement | null {
  const straight = along(sampler, frame, from, frame.centreX + frame.endX(end));
  if (worthOf(straight, [LOWER, MIDDLE, UPPER]) < MET_OWN) return null;
  return stringBow(straight.looks, from.y, frame.openingHeight)?.bow ?? null;
}

/** The end next to this one in whose notch a string hangs that doesn't run to its own; null where that isn't plain. */
export function neighboursNotch(
  sampler: LoomSampler,
  frame: ClothFrame,
  end: number,
  from: LeavesCloth,
): number | null {
  // Where two strings cross they can't be told apart.
  const worth = (to: number): number =>
    worthOf(along(sampler, frame, from, frame.centreX + frame.endX(to)), [LOWER, UPPER]);
  const beside = [end - 1, end + 1].flatMap((to) => (to >= 0 && to < frame.ends ? [{ to, worth: worth(to) }] : []));
  const best = beside.reduce((a, b) => (b.worth > a.worth ? b : a));
  // Where stripes or shadows lie behind, more courses than one meet something.
  const rivals = [worth(end), ...beside.flatMap((one) => (one === best ? [] : [one.worth]))];
  return best.worth < MET || rivals.some((one) => one > RIVAL * best.worth) ? null : best.to;
}

const worthOf = (one: Looked, stretches: readonly (readonly [number, number])[]): number =>
  Math.min(...stretches.map((stretch) => met(one, stretch)));

/** What was met along one supposed course. */
interface Looked {
  readonly looks: readonly StringLook[];
  readonly fellY: number;
  readonly topY: number;
}

/** Share of the looks within a stretch of the way up that met a string. */
function met({ looks, fellY, topY }: Looked, [from, to]: readonly [number, number]): number {
  const length = topY - fellY;
  const tried = Math.floor(((to - from) * length) / EVERY);
  if (tried < FEWEST) return 0;
  const inside = looks.filter((look) => {
    const t = (look.y - fellY) / length;
    return t >= from && t < to;
  });
  return Math.min(1, inside.length / tried);
}
