import { gramsInWords, lengthInWords, yarnLengthInWords, yarnWeightInWords } from '../model/lengthWords.ts';
import { countInWords, numberInWords } from '../model/numberWords.ts';
import type { Piece } from '../model/piece.ts';
import type { Arithmetic } from '../model/plan.ts';
import { type Grams, grams, type Metres, type Mm, mm } from '../model/units.ts';
import type { Verdict } from '../model/verdict.ts';
import { texFromPackedDiameter } from '../yarn/packing.ts';
import { centredFirstNotch, offCentre } from './centring.ts';
import { clothWidth } from './endWidth.ts';
import { warpLength } from './warpLength.ts';

/** Kept at each knot for tying and untying. Common practice, no source. */
const knotAllowance = mm(150);
/** How deep into the bar the notches lie, as a share of the bar's height. Common practice, no source. */
const notchDepthShare = 0.25;

export interface WarpPlan {
  readonly ends: number;
  readonly strings: number;
  /** 0-based, both included. */
  readonly notches: { readonly first: number; readonly last: number };
  readonly centredFirstNotch: number;
  /** mm, right of the loom's middle above 0. */
  readonly offCentre: Mm;
  readonly width: Mm;
  /** Loops over the top bar. */
  readonly loops: number;
  readonly knots: { readonly start: 'bottom'; readonly finish: 'bottom' | 'top' };
  /** One string from notch to notch. */
  readonly run: Mm;
  readonly length: Metres;
  readonly grams: Grams;
  /** True when the weight was guessed from the string's thickness. */
  readonly gramsGuess: boolean;
  readonly parity: Verdict<'ends-at-the-bottom' | 'ends-at-the-top'>;
  readonly arithmetic: Arithmetic;
}

/** How the warp is put on: which notches, how many strings and loops, how much to cut. */
export function warpPlan(piece: Piece): WarpPlan {
  const { loom, warp, units } = piece;
  const strings = warp.ends * warp.stringsPerEnd;
  const run = mm(loom.openingHeight + 2 * notchDepthShare * loom.bar);
  const knots = mm(2 * knotAllowance);
  const length = warpLength({ strings, run, crossing: loom.notchPitch, knots });
  const even = strings % 2 === 0;
  // Strings are hard-twisted cotton in most workshops; Peirce's packing is for cotton.
  const density = warp.tex ?? texFromPackedDiameter(warp.stringDiameter, 'cotton');
  const weight = grams((length * density) / 1000);
  const millimetres = (value: number) => lengthInWords(value, units);
  return {
    ends: warp.ends,
    strings,
    notches: { first: warp.firstNotch, last: warp.firstNotch + warp.ends - 1 },
    centredFirstNotch: centredFirstNotch(loom, warp.ends),
    offCentre: offCentre(loom, warp),
    width: clothWidth(loom, warp),
    loops: Math.floor(strings / 2),
    knots: { start: 'bottom', finish: even ? 'bottom' : 'top' },
    run,
    length,
    grams: weight,
    gramsGuess: warp.tex === null,
    parity: parityVerdict(even, warp.ends),
    arithmetic: {
      title: 'Warp to cut',
      lines: [
        {
          label: 'Strings',
          working: `${warp.ends} ends × ${countInWords(warp.stringsPerEnd, 'string')}`,
          result: numberInWords(strings),
        },
        {
          label: 'One string, notch to notch',
          working: `${millimetres(loom.openingHeight)} opening + 2 × ${millimetres(notchDepthShare * loom.bar)} to the notches`,
          result: millimetres(run),
        },
        {
          label: 'All strings',
          working: `${strings} × ${millimetres(run)}`,
          result: yarnLengthInWords((strings * run) / 1000, units),
        },
        {
          label: 'Round the bars',
          working: `${strings - 1} crossings × ${lengthInWords(loom.notchPitch, units, 'pass-height')}`,
          result: yarnLengthInWords(((strings - 1) * loom.notchPitch) / 1000, units),
        },
        {
          label: 'Knots',
          working: `2 × ${millimetres(knotAllowance)}`,
          result: yarnLengthInWords(knots / 1000, units),
        },
        { label: 'To cut', working: 'the three together', result: yarnLengthInWords(length, units) },
        {
          label: 'Weight',
          working: `${yarnLengthInWords(length, units)} × ${yarnWeightInWords(density, units)}${warp.tex === null ? ', guessed from its thickness' : ''}`,
          result: gramsInWords(weight),
        },
      ],
    },
  };
}

function parityVerdict(even: boolean, ends: number): WarpPlan['parity'] {
  if (even) {
    return {
      verdict: 'ends-at-the-bottom',
      sentence: 'Both knots are at the bottom bar, and the loops at the top slip onto the dowel.',
      why: 'An even number of strings that starts at the bottom ends there.',
      remedy: null,
    };
  }
  return {
    verdict: 'ends-at-the-top',
    sentence: 'The last string ends at the top bar, with a knot where a loop would be.',
    why: `A single warp of ${ends} ends is odd; starting and ending at the bottom takes an even number.`,
    remedy: `Add an end, for ${ends + 1}, or tie the last string to the dowel when the piece comes off.`,
  };
}
