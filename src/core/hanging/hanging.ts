import { gramsInWords, lengthInWords } from '../model/lengthWords.ts';
import { countInWords } from '../model/numberWords.ts';
import type { Piece } from '../model/piece.ts';
import { type Grams, type Mm, mm } from '../model/units.ts';
import type { WarpPlan } from '../warp/warpPlan.ts';
import { chooseDowel, type Dowel } from './chooseDowel.ts';
import { type Fringe, fringeOf } from './fringe.ts';
import { loopGroups } from './loopGroups.ts';

/** The cord rises a third of the dowel's length; each end is knotted. Common practice, no source. */
const cordRiseShare = 1 / 3;
const cordKnot = mm(100);

export interface Hanging {
  readonly load: Grams;
  readonly dowel: Dowel;
  /** Loops in each group, left to right. */
  readonly loopGroups: readonly number[];
  readonly cord: { readonly length: Mm; readonly rise: Mm };
  readonly fringe: Fringe;
  /** What to know before it goes on a wall. */
  readonly cautions: readonly string[];
  /** Dowel and cord for the shopping list. */
  readonly toBuy: readonly { readonly item: string; readonly amount: string; readonly note: string }[];
}

/**
 * How a piece hangs: the dowel its loops slip on, the cord, the fringe.
 * @param load everything below the dowel: cloth, warp, ornaments.
 */
export function hangingOf(piece: Piece, warp: WarpPlan, load: Grams): Hanging {
  const { units } = piece;
  const dowel = chooseDowel(piece, load);
  const rise = mm(dowel.length * cordRiseShare);
  const cord = { length: mm(2 * Math.hypot(dowel.length / 2, rise) + 2 * cordKnot), rise };
  return {
    load,
    dowel,
    loopGroups: loopGroups(warp.loops),
    cord,
    fringe: fringeOf(piece),
    cautions: [
      `It weighs about ${gramsInWords(load)} without its dowel. Use a fixing made for more than that, in a wall that will hold it.`,
      'Over a bed, a seat or a way through use two fixings, and ask someone who knows the wall.',
    ],
    toBuy: [
      {
        item: 'Dowel',
        amount: `${lengthInWords(dowel.length, units)} long, ${lengthInWords(dowel.diameter, units)} thick`,
        note: dowel.verdict.verdict === 'bows' ? (dowel.verdict.remedy ?? '') : 'Sand the ends.',
      },
      {
        item: 'Cord to hang it by',
        amount: lengthInWords(cord.length, units),
        note: `${countInWords(2, 'knot')} included.`,
      },
    ],
  };
}
