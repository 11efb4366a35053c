import type { Measurement } from '../model/measurement.ts';
import type { ClothFrame } from './clothFrame.ts';
import { NO_STRING } from './countEnds.ts';
import type { StringTrack } from './loomPose.ts';
import type { LoomSampler } from './sampleLoom.ts';
import { stringBow } from './stringBow.ts';
import { EVERY, type StringLook, stringLooks } from './stringLooks.ts';

/** How the bare string of one end runs. */
export interface StringRun {
  readonly bow: Measurement | null;
  /** Index of the end whose notch it hangs in: its own as a rule; null where that wasn't seen. */
  readonly runsTo: number | null;
}

export const UNSEEN: StringRun = { bow: null, runsTo: null };

/** How far from a supposed course a look may meet the string, as a share of the pitch. */
const REACH = 0.12;
/** Stretches of the way up, as shares: two strings that cross lie over each other in the middle one. */
const LOWER = [0.18, 0.36] as const;
const MIDDLE = [0.36, 0.64] as const;
const UPPER = [0.64, 0.82] as const;
const WHOLE = [LOWER, MIDDLE, UPPER];
/** Share of the looks that must meet a string there, and how much of that share any other course may meet. */
const MET = 0.55;
const RIVAL = 0.6;
/** A string met this often along the straight to its own notch needs no other course. */
const PLAIN = 0.85;
/** A stretch too short for so many looks says nothing. */
const FEWEST = 4;
/** Bows looked for, as shares of the pitch. */
const BOWS = [0.15, 0.25, 0.35, 0.45, 0.55, 0.65].flatMap((bow) => [bow, -bow]);
/** Bows this near to each other meet the same string. */
const ALIKE = 0.25;

/** Looks for a string that was lost on the way along supposed courses from where it leaves the cloth, loom mm. */
export function lostString(
  sampler: LoomSampler,
  frame: ClothFrame,
  track: StringTrack,
  fellY: number,
  fellX: number,
): StringRun {
  const topY = frame.openingHeight;
  const notchOf = (index: number): number => frame.centreX + frame.endX(index);
  const along = (toX: number, bow: number): Looked => {
    const course = (y: number): number => {
      const t = (y - fellY) / (topY - fellY);
      return fellX + (toX - fellX) * t + bow * 4 * t * (1 - t);
    };
    const looks = stringLooks(sampler, frame, course, topY - 5, fellY + 1, REACH * frame.pitch);
    return { looks, fellY, topY };
  };
  const atNotch = track.why !== NO_STRING;
  const straight = along(notchOf(track.end), 0);
  const worth = atNotch ? worthOf(straight, WHOLE) : 0;
  if (worth > PLAIN) return { bow: stringBow(straight.looks, fellY, topY)?.bow ?? null, runsTo: track.end };
  const candidates = [
    { runsTo: track.end, bow: 0, course: straight, worth },
    ...[track.end - 1, track.end + 1].flatMap((index) => {
      if (index < 0 || index >= frame.ends) return [];
      const course = along(notchOf(index), 0);
      // Where two strings cross they can't be told apart.
      return [{ runsTo: index, bow: 0, course, worth: worthOf(course, [LOWER, UPPER]) }];
    }),
    ...(atNotch ? BOWS : []).map((bow) => {
      const course = along(notchOf(track.end), bow * frame.pitch);
      return { runsTo: track.end, bow, course, worth: worthOf(course, WHOLE) };
    }),
  ];
  const best = candidates.reduce((a, b) => (b.worth > a.worth ? b : a));
  // Where stripes or shadows lie behind, more courses than one meet something.
  const others = candidates.filter((one) => one.runsTo !== best.runsTo || Math.abs(one.bow - best.bow) > ALIKE);
  if (best.worth < MET || others.some((one) => one.worth > RIVAL * best.worth)) return UNSEEN;
  if (best.runsTo !== track.end) return { bow: null, runsTo: best.runsTo };
  const first = stringBow(best.course.looks, fellY, topY);
  // Looked for once more along what was found, so that no look was kept out by the first guess.
  const again = first && stringBow(along(notchOf(track.end), first.bow.value).looks, fellY, topY);
  return again ? { bow: again.bow, runsTo: track.end } : UNSEEN;
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
