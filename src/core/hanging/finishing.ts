import { lengthInWords } from '../model/lengthWords.ts';
import { listInWords } from '../model/listWords.ts';
import { countInWords } from '../model/numberWords.ts';
import type { Piece } from '../model/piece.ts';
import type { Slit } from '../model/plan.ts';
import { mayStayOpen } from '../order/slits.ts';
import type { Hanging } from './hanging.ts';

/** What each step is called where it is ticked off. */
export type FinishingName =
  | 'close'
  | 'tails'
  | 'slits'
  | 'dowel'
  | 'bottom'
  | 'ornaments'
  | 'steam'
  | 'hang'
  | 'record';

export interface FinishingStep {
  readonly name: FinishingName;
  readonly step: string;
  /** Where hands or others can be hurt, or the cloth spoilt; null where there is nothing to say. */
  readonly caution: string | null;
}

/** From the last pass to the wall, in order, with the piece's own figures. */
export function finishingSteps(
  piece: Piece,
  hanging: Hanging,
  tails: number,
  slits: readonly Slit[],
): readonly FinishingStep[] {
  const { units, cloth, ornaments } = piece;
  const words = (length: number) => lengthInWords(length, units);
  const long = slits.filter((slit) => !mayStayOpen(slit, piece));
  const longest = Math.max(0, ...long.map((slit) => slit.lengthMm));
  const steps: (FinishingStep | null)[] = [
    {
      name: 'close',
      step:
        cloth.footerPasses > 0
          ? `Weave ${countInWords(cloth.footerPasses, 'pass', 'passes')} of footer, then twine one row above them.`
          : 'Twine one row above the last pass, so that nothing slides when the tension goes.',
      caution: null,
    },
    {
      name: 'tails',
      step: `With the piece still on the loom, tuck in ${countInWords(tails, 'tail')} at the back, each along an end for ${words(25)}, and trim.`,
      caution: 'Take turns with other work: long fine work tires hands and eyes.',
    },
    long.length === 0
      ? null
      : {
          name: 'slits',
          step: `Sew ${countInWords(long.length, 'slit')} from the back; the longest is ${words(longest)}.`,
          caution: 'A needle through tight cloth can slip: push away from the other hand, or wear a thimble.',
        },
    {
      name: 'dowel',
      step: `Slip the loops off the top bar onto the dowel, in groups of ${groupWords(hanging.loopGroups)}.`,
      caution: 'Ease the tension first: strings under strain can whip, and the dowel can spring.',
    },
    {
      name: 'bottom',
      step:
        hanging.fringe.length > 0
          ? `Cut the strings at the bottom bar a few at a time, knot each group against the twining, and trim the fringe to ${words(hanging.fringe.length)}.`
          : 'Undo the strings at the bottom bar a few at a time and needle each back into the cloth.',
      caution: hanging.fringe.length > 0 ? 'Cut away from the hand that holds the strings, with sharp blades.' : null,
    },
    ornaments.length === 0
      ? null
      : {
          name: 'ornaments',
          step: `Fasten ${countInWords(
            ornaments.reduce((sum, ornament) => sum + ornament.count, 0),
            'ornament',
          )} where the plan puts them.`,
          caution: null,
        },
    {
      name: 'steam',
      step: 'Lay it face down on a towel and steam it lightly from the back, without pressing. Try a spare end first.',
      caution: 'Steam scalds, and some fibres shrink or run: follow what the yarn’s label and the iron’s maker say.',
    },
    {
      name: 'hang',
      step: `Tie ${words(hanging.cord.length)} of cord to the ends of the dowel, and hang it where sun doesn’t fall on it.`,
      caution: hanging.cautions.join(' '),
    },
    { name: 'record', step: 'Measure it off the loom, photograph it, and write both in the record.', caution: null },
  ];
  return steps.filter((step) => step !== null);
}

/** `4`, or `4 and 5` where the groups differ. */
function groupWords(groups: readonly number[]): string {
  return listInWords([...new Set(groups)].sort((a, b) => a - b));
}
