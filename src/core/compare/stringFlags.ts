import { inBothUnits } from '../model/bothUnits.ts';
import type { EndReading, Flag, LoomReading } from '../model/check.ts';
import { sizeAsFinding } from '../model/deviationWords.ts';
import { type Measurement, measurement } from '../model/measurement.ts';
import type { Piece } from '../model/piece.ts';
import { median, robustSigma } from '../photo/statistics.ts';
import { bareStringPlace } from './bareStringPlace.ts';

/** A string that bows no more than this beyond the others is as taut as they are, mm (value from memory). */
const LEAST = 1;
/** And it must bow by this many sigmas, so that one string in hundreds isn't called slack for nothing. */
const SIGMAS = 3;
/** The usual bow is known from so many strings. */
const FEWEST = 8;
/** How far a string may sit beside the middle of its notch, mm (value from memory). */
const NOTCH_PLAY = 0.12;

const UNSEEN = 'A picture from above doesn’t show how far a string sags: feel it with a finger.';

/** Strings that are slack, and strings that hang in another's notch. */
export function stringFlags(reading: LoomReading, piece: Piece): Flag[] {
  return [...crossedFlags(reading, piece), ...slackFlags(reading, piece)];
}

/** The bow of one end beyond what all have in common. */
interface Stray {
  readonly end: EndReading;
  readonly mm: number;
  readonly sigma: number;
}

/**
 * Ends that bow more than the others: what an error of lens or view bends, it bends alike or growing evenly across the
 * warp, so a line through all bows is taken out first. Neighbours that are slack together are said once.
 */
function slackFlags(reading: LoomReading, piece: Piece): Flag[] {
  const known = reading.ends.flatMap((end) => (end.bow ? [{ end, bow: end.bow }] : []));
  if (known.length < FEWEST) return [];
  const usual = usualBow(known);
  const off = known.map(({ end, bow }) => bow.value - usual(end.index));
  const scatter = robustSigma(off);
  const slack = known.flatMap(({ end, bow }, k): Stray[] => {
    const mm = off[k]!;
    const isSlack = Math.abs(mm) > LEAST && Math.abs(mm) > SIGMAS * Math.hypot(bow.sigma, scatter);
    return isSlack ? [{ end, mm, sigma: Math.hypot(bow.sigma, scatter / Math.sqrt(known.length)) }] : [];
  });
  const groups: Stray[][] = [];
  for (const one of slack) {
    const group = groups.at(-1);
    if (group && group.at(-1)!.end.index === one.end.index - 1) group.push(one);
    else groups.push([one]);
  }
  return groups.map((group) => slackFlag(group, reading, piece));
}

/** A line through the bows by end, by the middle of all slopes (Theil 1950, Sen 1968): slack ends don't pull it. */
function usualBow(
  known: readonly { readonly end: EndReading; readonly bow: Measurement }[],
): (index: number) => number {
  const slopes: number[] = [];
  known.forEach((a, i) => {
    for (const b of known.slice(i + 1)) {
      slopes.push((b.bow.value - a.bow.value) / (b.end.index - a.end.index));
    }
  });
  const slope = median(slopes);
  const level = median(known.map(({ end, bow }) => bow.value - slope * end.index));
  return (index) => level + slope * index;
}

function slackFlag(group: readonly Stray[], reading: LoomReading, piece: Piece): Flag {
  const most = group.reduce((a, b) => (Math.abs(b.mm) > Math.abs(a.mm) ? b : a));
  const first = group[0]!.end.index + 1;
  const last = group.at(-1)!.end.index + 1;
  const way = most.mm < 0 ? 'left' : 'right';
  const place = bareStringPlace(most.end, reading, piece);
  const alone = group.length === 1;
  const bow = measurement(most.mm, most.sigma, 1, 'bare string');
  return {
    kind: 'slack',
    side: place.side,
    yMm: place.y,
    xMm: place.x + most.end.bow!.value,
    ends: group.map(({ end }) => end.index),
    deviationMm: place.side === 'left' ? -most.mm : most.mm,
    sigmaMm: most.sigma,
    message: inBothUnits((units) => {
      const size = sizeAsFinding(bow, units);
      const how = `Up to ${size.figure} to one side, ${size.giveOrTake}. ${UNSEEN}`;
      return alone
        ? `End ${first} bows to the ${way} above the cloth. ${how}`
        : `Ends ${first} to ${last} bow above the cloth. ${how}`;
    }),
    // Common practice, no source.
    advice: alone
      ? 'If nothing pushes it aside, tighten it before weaving on: take it up with a stick at the top bar, or tie it anew.'
      : 'If nothing pushes them aside, tighten them before weaving on: take them up with a stick at the top bar, or tie them anew.',
  };
}

/** Ends that hang in another end's notch: two that changed places are said once. */
function crossedFlags(reading: LoomReading, piece: Piece): Flag[] {
  const byIndex = new Map(reading.ends.map((end) => [end.index, end]));
  return reading.ends.flatMap((end): Flag[] => {
    const to = end.runsTo;
    if (to === null || to === end.index) return [];
    const other = byIndex.get(to)?.runsTo ?? null;
    // What hangs in its own notch instead isn't its own: unless the other is seen to hang straight, the two changed places.
    const crossed = other === end.index || (other === null && end.notchX !== null);
    if (other === end.index && to < end.index) return [];
    const from = crossed ? Math.min(end.index, to) + 1 : end.index + 1;
    const notch = crossed ? Math.max(end.index, to) + 1 : to + 1;
    const place = bareStringPlace(end, reading, piece);
    const aside = (to - end.index) * piece.loom.notchPitch;
    return [
      {
        kind: 'slack',
        side: place.side,
        yMm: place.y,
        xMm: place.x + aside / 2,
        ends: crossed ? [from - 1, notch - 1] : [end.index],
        deviationMm: place.side === 'left' ? -aside : aside,
        sigmaMm: NOTCH_PLAY,
        message: inBothUnits(() =>
          crossed
            ? `Ends ${from} and ${notch} cross between the cloth and the top bar.`
            : `End ${from} hangs in the notch of end ${notch}.`,
        ),
        // Common practice, no source.
        advice: crossed
          ? 'Unhook both at the top bar and let them change places before weaving on.'
          : 'Unhook it at the top bar and hang it in its own notch before weaving on.',
      },
    ];
  });
}
