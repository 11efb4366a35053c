import { gramsInWords, lengthInWords, yarnLengthInWords, yarnWeightInWords } from '../model/lengthWords.ts';
import { countInWords, numberInWords } from '../model/numberWords.ts';
import type { Piece, Yarn } from '../model/piece.ts';
import type { Arithmetic, ArithmeticLine } from '../model/plan.ts';
import { takeUpFromCrimp } from './weftCrimp.ts';
import type { UseSource } from './weftUse.ts';
import type { YarnNeed } from './yarnNeed.ts';

const sourceWords: Readonly<Record<UseSource, string>> = {
  label: 'from its label',
  count: 'by its count; plied yarn often holds 5 % less length',
  diameter: 'from its diameter',
  wraps: 'from its wraps',
  category: 'guessed from its category',
  'pass-height': 'guessed from the pass height',
};

/** One yarn's sum, line by line. Lines that come to nothing are left out. */
export function needArithmetic(piece: Piece, yarn: Yarn, need: YarnNeed): Arithmetic {
  const { units, loom, making } = piece;
  const { parts, runs, perEnd } = need;
  const fine = (length: number) => lengthInWords(length, units, 'pass-height');
  const long = (length: number) => yarnLengthInWords(length, units);
  const percent = (share: number) => {
    const whole = Math.abs(share * 100 - Math.round(share * 100)) < 1e-9;
    return `${numberInWords(share * 100, share < 0.0995 && !whole ? 1 : 0)} %`;
  };
  const strands = yarn.strands === 1 ? '' : ` × ${countInWords(yarn.strands, 'strand')}`;
  const crowded = perEnd.crowded ? ', a bound because the weft crowds' : '';
  const lines: (ArithmeticLine | null)[] = [
    {
      label: 'Thickness of the weft',
      working: sourceWords[need.weft.from],
      result: fine(need.weft.diameter),
    },
    {
      label: 'Weft over one end',
      working: `${fine(loom.notchPitch)} + ${percent(perEnd.crimp)} for going over and under (${percent(takeUpFromCrimp(perEnd.crimp))} of the yarn)${need.measured ? ', as measured' : crowded}`,
      result: fine(perEnd.length),
    },
    runs.cells === 0
      ? null
      : {
          label: 'Passes',
          working: `${numberInWords(runs.cells)} ends crossed × ${fine(perEnd.length)}${strands}`,
          result: long(parts.passes),
        },
    runs.headerCells === 0
      ? null
      : {
          label: 'Header and footer',
          working: `${numberInWords(runs.headerCells)} ends crossed × ${fine(perEnd.length)}${strands}`,
          result: long(parts.header),
        },
    runs.runs === 0 || need.parts.turns === 0
      ? null
      : {
          label: 'Turning',
          working: `${countInWords(runs.runs, 'pass', 'passes')} × ${fine(need.turnExtra)}${strands}`,
          result: long(parts.turns),
        },
    parts.twining === 0
      ? null
      : {
          label: 'Twining',
          working: '2 rows of 2 strands, twice the width each, with tails',
          result: long(parts.twining),
        },
    need.tails === 0
      ? null
      : {
          label: 'Tails',
          working: `${countInWords(need.tails, 'tail')} × ${lengthInWords(making.tail, units)}${strands}`,
          result: long(parts.tails),
        },
    ...parts.extras.map((extra) => ({ label: extra.what, working: 'made apart', result: long(extra.metres) })),
    {
      label: 'Spare',
      working: `${percent(making.spare)} of the above`,
      result: long(parts.spare),
    },
    { label: 'To buy', working: 'all of these', result: long(need.metres) },
    {
      label: 'Weight',
      working: `${long(need.metres)} × ${yarnWeightInWords(need.density.tex, units)}, ${sourceWords[need.density.from]}`,
      result: gramsInWords(need.grams),
    },
    need.balls === null
      ? null
      : {
          label: 'Balls',
          working: `${gramsInWords(need.grams)} ÷ ${gramsInWords(yarn.ballGrams ?? yarn.label?.grams ?? 0)} a ball, rounded up`,
          result: numberInWords(need.balls),
        },
  ];
  return { title: yarn.name, lines: lines.filter((line) => line !== null) };
}
