import type { EndReading } from '../model/check.ts';
import type { Measurement } from '../model/measurement.ts';
import type { ClothFrame } from './clothFrame.ts';
import { NO_STRING } from './countEnds.ts';
import type { StringTrack } from './loomPose.ts';
import type { LoomSampler } from './sampleLoom.ts';
import { type LeavesCloth, neighboursNotch, straightString } from './straightCourses.ts';
import { stringBow } from './stringBow.ts';
import { trackLine } from './trackLine.ts';

/** How the bare string of one end runs. */
export interface StringRun {
  readonly bow: Measurement | null;
  /** Index of the end whose notch it hangs in: its own as a rule; null where that wasn't seen. */
  readonly runsTo: number | null;
}

const UNSEEN: StringRun = { bow: null, runsTo: null };

/** A string stands this near to where its notch and its cloth say, as a share of the pitch, or it is another's. */
const OWN = 0.35;

/**
 * How every end's string runs between cloth and top bar. Most were followed from their notch to their own cloth. Where one
 * was lost on the way, it is looked for along the straights to its own notch and to its neighbours'.
 * @param ends with their fells; one per track.
 */
export function stringRuns(
  sampler: LoomSampler,
  frame: ClothFrame,
  tracks: readonly StringTrack[],
  ends: readonly EndReading[],
): StringRun[] {
  // Where clicked corners alone tie the picture to the loom, no notch is known well enough.
  if (sampler.pose.reference.method === 'points') return tracks.map(() => UNSEEN);
  const topY = frame.openingHeight;
  const notchOf = (index: number): number => frame.centreX + frame.endX(index);
  const own = (x: number, expected: number): boolean => Math.abs(x - expected) < OWN * frame.pitch;
  const ofOwnReading = (i: number): number | null => {
    const { xAtFell, index } = ends[i]!;
    return xAtFell && xAtFell.value - frame.endX(index);
  };
  const byTrack = tracks.map((track, i): Followed | null => {
    const fell = bareAbove(ends, i);
    const run = fell === null ? null : stringBow(track.bare, fell + frame.baseY, topY);
    if (!run || !own(run.atBar, notchOf(track.end))) return null;
    const outward = run.atFell - notchOf(track.end);
    if (!own(outward, ofOwnReading(i) ?? 0)) return null;
    // Where its own fell isn't told, something lies there that may have led the track aside.
    return { bow: ends[i]!.fell && run.bow, outward };
  });
  const followed = tracks.map((track, i): Followed | null => {
    const { fell } = ends[i]!;
    const outward = ofOwnReading(i);
    if (byTrack[i] || track.why === NO_STRING || fell === null || outward === null) return byTrack[i]!;
    const from = { x: notchOf(track.end) + outward, y: fell.value + frame.baseY };
    const bow = straightString(sampler, frame, track.end, from);
    return bow && { bow, outward };
  });
  // A string that crosses misleads what was read of its end: where it leaves the cloth, its neighbours say.
  const fells = tracks.map((_, i): LeavesCloth | null => {
    const y = bareAbove(ends, i);
    const outward = followed[i]?.outward ?? besides(followed, i);
    return y === null || outward === null ? null : { x: notchOf(ends[i]!.index) + outward, y: y + frame.baseY };
  });
  const heads = tracks.map((track, i) => (followed[i] || !fells[i] ? null : headingOf(track.bare, fells[i]!.y, topY)));
  /** Whether the strings in two notches head for each other's place in the cloth. */
  const changed = (i: number, j: number): boolean => {
    const heading = (from: number, to: number): boolean => {
      const head = heads[from];
      return head !== null && head !== undefined && Math.abs(head - (fells[to]?.x ?? Number.NaN)) < OWN * frame.pitch;
    };
    return heading(i, j) && heading(j, i);
  };
  return tracks.map((track, i): StringRun => {
    const found = followed[i];
    if (found) return { bow: found.bow, runsTo: track.end };
    const other = [i - 1, i + 1].find((j) => changed(i, j));
    if (other !== undefined) return { bow: null, runsTo: tracks[other]!.end };
    const fell = fells[i];
    return fell ? { bow: null, runsTo: neighboursNotch(sampler, frame, track.end, fell) } : UNSEEN;
  });
}

/** Share of the way up from which on a string that crosses another is still apart from it. */
const APART = 0.7;
/** It must be followed over such a share of its length there, by so many looks. */
const HEAD = 0.15;
const HEAD_LOOKS = 6;

/** Where the string next to its notch heads for, were it straight all the way: loom x at the fell, mm. */
function headingOf(bare: StringTrack['bare'], fellY: number, topY: number): number | null {
  const head = bare.filter((look) => (look.y - fellY) / (topY - fellY) > APART);
  if (head.length < HEAD_LOOKS) return null;
  const heights = head.map((look) => look.y);
  if (Math.max(...heights) - Math.min(...heights) < HEAD * (topY - fellY)) return null;
  return trackLine(head)?.x(fellY) ?? null;
}

/** Neighbours say where an end leaves the cloth only from so near, in ends. */
const BESIDE = 3;

/** How far right of its notch an end leaves the cloth, as the nearest followed ends on both sides have it, mm. */
function besides(followed: readonly (Followed | null)[], i: number): number | null {
  const onSide = (step: -1 | 1): number | null => {
    for (let k = 1; k <= BESIDE; k++) {
      const one = followed[i + step * k];
      if (one) return one.outward;
    }
    return null;
  };
  const left = onSide(-1);
  const right = onSide(1);
  if (left !== null && right !== null) return (left + right) / 2;
  // The outermost ends have neighbours on one side only.
  if (i < BESIDE) return right;
  return i >= followed.length - BESIDE ? left : null;
}

interface Followed {
  readonly bow: Measurement | null;
  /** How far right of its notch it leaves the cloth, mm. */
  readonly outward: number;
}

/** Cloth height above which an end is bare: its own fell, else the higher of its nearest neighbours'; null without any. */
function bareAbove(ends: readonly EndReading[], i: number): number | null {
  const own = ends[i]?.fell;
  if (own) return own.value;
  const near = nearest(ends, i, (end) => end.fell?.value ?? null);
  return near.length > 0 ? Math.max(...near) : null;
}

/** The nearest figure on either side of one place, as far as there is one. */
function nearest<End>(ends: readonly End[], i: number, figure: (end: End) => number | null): number[] {
  const first = (part: readonly End[]): number[] => {
    for (const end of part) {
      const value = figure(end);
      if (value !== null) return [value];
    }
    return [];
  };
  return [...first(ends.slice(0, i).reverse()), ...first(ends.slice(i + 1))];
}
