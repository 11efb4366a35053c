import type { Piece, Yarn } from '../model/piece.ts';
import { type Grams, grams, type Metres, type Mm, metres, mm, type Tex } from '../model/units.ts';
import { linearDensity } from '../yarn/linearDensity.ts';
import { texFromPackedDiameter } from '../yarn/packing.ts';
import type { WeftPerEnd } from './weftCrimp.ts';
import { type UseSource, type WeftUse, weftUse } from './weftUse.ts';
import type { YarnRuns } from './yarnRuns.ts';

/** Yarn that goes into something other than passes: a flower, a cord. */
export interface YarnExtra {
  /** Id of a yarn of the piece. */
  readonly yarn: string;
  readonly what: string;
  readonly metres: Metres;
}

/** How one yarn's metres are made up. Every length is of yarn as bought: strands are counted in. */
export interface YarnNeed {
  readonly yarn: string;
  readonly name: string;
  readonly runs: YarnRuns;
  readonly weft: WeftUse['weft'];
  readonly perEnd: WeftPerEnd;
  /** True when the use was measured on cloth, not worked out. */
  readonly measured: boolean;
  readonly turnExtra: Mm;
  readonly parts: {
    readonly passes: Metres;
    readonly header: Metres;
    readonly turns: Metres;
    readonly twining: Metres;
    readonly tails: Metres;
    readonly extras: readonly YarnExtra[];
    readonly spare: Metres;
  };
  readonly tails: number;
  /** What stays in the finished piece: all but tails, extras and spare. */
  readonly woven: Metres;
  /** To buy. */
  readonly metres: Metres;
  readonly grams: Grams;
  readonly wovenGrams: Grams;
  readonly density: { readonly tex: Tex; readonly from: UseSource; readonly guess: boolean };
  /** Null when nothing says how much is in a ball. */
  readonly balls: number | null;
  /** Working lengths to wind. */
  readonly pieces: number;
}

export interface YarnCounts {
  readonly runs: YarnRuns;
  /** Wefts of this yarn that are begun afresh: a block that goes on with another's weft begins none. */
  readonly starts: number;
  /** Joins inside blocks of this yarn. */
  readonly joins: number;
  /** Twining of this yarn, mm of single strand. */
  readonly twining: Mm;
  readonly extras: readonly YarnExtra[];
}

/** Everything one yarn is needed for. Each weft has a tail where it starts and one where it stops; a join has both. */
export function yarnNeed(piece: Piece, yarn: Yarn, counts: YarnCounts): YarnNeed {
  const { making } = piece;
  const { weft, perEnd, turnExtra, measured } = weftUse(piece, yarn);
  const asBought = (millimetres: number) => metres((millimetres * yarn.strands) / 1000);
  const passes = asBought(counts.runs.cells * perEnd.length);
  const header = asBought(counts.runs.headerCells * perEnd.length);
  const turns = asBought(counts.runs.runs * turnExtra);
  const twining = metres(counts.twining / 1000);
  const tails = 2 * (counts.starts + counts.joins);
  const tailMetres = asBought(tails * making.tail);
  const woven = metres(passes + header + turns + twining);
  const extras = counts.extras.reduce((sum, { metres: length }) => sum + length, 0);
  const withoutSpare = woven + tailMetres + extras;
  const spare = metres(withoutSpare * making.spare);
  const total = metres(withoutSpare + spare);
  const density = densityOf(yarn, weft);
  const weight = grams((total * density.tex) / 1000);
  const ball = yarn.ballGrams ?? yarn.label?.grams ?? null;
  return {
    yarn: yarn.id,
    name: yarn.name,
    runs: counts.runs,
    weft,
    perEnd,
    measured,
    turnExtra,
    parts: { passes, header, turns, twining, tails: tailMetres, extras: counts.extras, spare },
    tails,
    woven,
    metres: total,
    grams: weight,
    wovenGrams: grams(((woven + extras) * density.tex) / 1000),
    density,
    balls: ball === null || total === 0 ? (ball === null ? null : 0) : Math.ceil(weight / ball - 1e-9),
    pieces: counts.starts + counts.joins,
  };
}

function densityOf(yarn: Yarn, weft: YarnNeed['weft']): YarnNeed['density'] {
  const known = linearDensity(yarn);
  if (known !== null) return { tex: known.tex, from: known.from, guess: known.guess };
  const strand = mm(weft.diameter / Math.sqrt(yarn.strands));
  return { tex: texFromPackedDiameter(strand, yarn.fibre), from: weft.from, guess: true };
}
