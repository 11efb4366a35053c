import { inBothUnits } from '../model/bothUnits.ts';
import type { EndReading, Flag, LoomReading } from '../model/check.ts';
import { sizeAsFinding } from '../model/deviationWords.ts';
import { lengthInWords } from '../model/lengthWords.ts';
import { listInWords } from '../model/listWords.ts';
import { measurement } from '../model/measurement.ts';
import type { Piece } from '../model/piece.ts';
import { NO_STRING } from '../photo/countEnds.ts';
import { OVER_NOTCH } from '../photo/coveredNotches.ts';
import { bareStringPlace } from './bareStringPlace.ts';

/** A beat that would land the whole piece higher or lower than planned. */
export function beatFlags(reading: LoomReading, piece: Piece): Flag[] {
  const { pass } = reading;
  if (!pass) return [];
  const { passHeight, height } = piece.cloth;
  const passes = height / passHeight;
  const off = (pass.value - passHeight) * passes;
  const sigma = pass.sigma * passes;
  if (Math.abs(off) <= piece.making.allowance || Math.abs(off) <= 2 * sigma) return [];
  const softer = off > 0;
  const landing = measurement(off, sigma, 1, 'pass');
  return [
    {
      kind: 'beat',
      side: null,
      yMm: null,
      xMm: null,
      ends: [],
      deviationMm: off,
      sigmaMm: sigma,
      message: inBothUnits((units) => {
        const [seen, planned] = [pass.value, passHeight].map((one) => lengthInWords(one, units, 'pass-height'));
        const size = sizeAsFinding(landing, units);
        return (
          `Beating ${softer ? 'softer' : 'harder'}: a pass is ${seen}, not ${planned}. ` +
          `Left as it is, the top will sit ${size.figure} ${softer ? 'high' : 'low'}, ${size.giveOrTake}.`
        );
      }),
      advice: 'Re-plan the rest with the measured pass, or change the beat.',
    },
  ];
}

/** Strings named by number when they aren't seen, and shown from near. */
const MOST_NAMED = 4;

/** Ends whose notches lie under something: nothing is said of their strings. */
function hiddenFlag(hidden: readonly EndReading[], reading: LoomReading, piece: Piece): Flag {
  const first = hidden[0]!;
  const numbers = `${first.index + 1}–${hidden[hidden.length - 1]!.index + 1}`;
  const place = bareStringPlace(first, reading, piece);
  return {
    kind: 'count',
    side: place?.side ?? null,
    yMm: place?.y ?? null,
    xMm: place?.x ?? null,
    ends: hidden.map((end) => end.index),
    deviationMm: 0,
    sigmaMm: (hidden.length * piece.loom.notchPitch) / 2,
    message: inBothUnits(() => `Something lies over notches of ends ${numbers}, so the ends weren’t counted.`),
    advice: 'Take it away for a full count.',
  };
}

/** Ends planned against ends seen. A string that was overlooked at its notch but followed above the cloth is there. */
export function countFlags(reading: LoomReading, piece: Piece): Flag[] {
  const planned = piece.warp.ends;
  const lacking = reading.ends.filter((end) => end.notchX === null);
  const hidden = lacking.filter((end) => end.why === OVER_NOTCH);
  if (reading.endsCounted === null) return hidden.length > 0 ? [hiddenFlag(hidden, reading, piece)] : [];
  // Ends may also lack a place because something hides them above the cloth: those were counted.
  const short = planned - reading.endsCounted;
  const empty = lacking.filter((end) => end.why === NO_STRING);
  const from = empty.length === short ? empty : lacking;
  const followed = from.length === short ? from.filter((end) => end.runsTo !== null) : [];
  const counted = reading.endsCounted + followed.length;
  if (counted === planned) return [];
  const unseen = from.filter((end) => !followed.includes(end));
  // More than a few are no matter of single strings: another number of ends, or a part of the loom out of sight.
  const named = unseen.length <= MOST_NAMED ? unseen : [];
  const numbers = listInWords(named.map((end) => end.index + 1));
  const which = named.length > 0 ? ` ${named.length === 1 ? 'End' : 'Ends'} ${numbers} may be missing or hidden.` : '';
  const place = named[0] === undefined ? null : bareStringPlace(named[0], reading, piece);
  return [
    {
      kind: 'count',
      side: place?.side ?? null,
      yMm: place?.y ?? null,
      xMm: place?.x ?? null,
      ends: named.map((end) => end.index),
      deviationMm: (counted - planned) * piece.loom.notchPitch,
      sigmaMm: piece.loom.notchPitch / 2,
      message: inBothUnits(() => `${planned} ends planned, ${counted} seen.${which}`),
      advice:
        unseen.length === 1
          ? 'Look whether it is there.'
          : 'Look whether they are there, and that the piece says the right number.',
    },
  ];
}
