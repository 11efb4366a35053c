import type { Piece } from '../model/piece.ts';
import type { Arithmetic, Chart, Join } from '../model/plan.ts';
import { type Grams, grams, mm } from '../model/units.ts';
import { type WarpPlan, warpPlan } from '../warp/warpPlan.ts';
import { needArithmetic } from './needArithmetic.ts';
import { type Twining, twiningOf } from './twining.ts';
import { type WorkingHours, type WovenBlock, workingHours } from './workingHours.ts';
import { type YarnExtra, type YarnNeed, yarnNeed } from './yarnNeed.ts';
import { yarnRuns } from './yarnRuns.ts';

export interface Materials {
  /** One for each yarn of the piece, in its order, needed or not. */
  readonly yarns: readonly YarnNeed[];
  readonly warp: WarpPlan;
  readonly twining: Twining;
  /** Tails to tuck in: weft's and twining's. */
  readonly tails: number;
  /** What will hang: the weft in the cloth and the warp inside it and in the fringe. */
  readonly clothGrams: Grams;
  readonly hours: WorkingHours;
  /** Every sum with its working: warp, each yarn, hours. */
  readonly arithmetic: readonly Arithmetic[];
}

/**
 * What a piece takes. Weft comes from the chart's cells, tails and working lengths from the blocks and joins.
 * @param extras yarn for ornaments and cord, added to the yarn they are made of.
 */
export function materialsOf(
  piece: Piece,
  chart: Chart,
  blocks: readonly WovenBlock[],
  joins: readonly Join[],
  extras: readonly YarnExtra[] = [],
): Materials {
  const runs = yarnRuns(chart, piece.yarns.length);
  const twining = twiningOf(piece);
  const blockYarn = new Map(blocks.map((block) => [block.order, block.yarn]));
  const yarns = piece.yarns.map((yarn, index) =>
    yarnNeed(piece, yarn, {
      runs: runs[index] ?? { cells: 0, headerCells: 0, runs: 0 },
      starts: blocks.filter((block) => block.yarn === index && block.continues === null).length,
      joins: joins.filter((join) => blockYarn.get(join.block) === index).length,
      twining: mm(yarn.id === piece.cloth.headerYarn ? twining.length : 0),
      extras: extras.filter((extra) => extra.yarn === yarn.id),
    }),
  );
  const warp = warpPlan(piece);
  const hours = workingHours(piece, blocks, joins, twining.rows);
  const hanging = (piece.cloth.height + piece.making.fringe) / warp.run;
  const warpShare = warp.strings * warp.run * Math.min(1, hanging);
  const perMm = warp.grams / (warp.length * 1000);
  return {
    yarns,
    warp,
    twining,
    tails: yarns.reduce((sum, need) => sum + need.tails, 0) + 2 * twining.rows * twining.strands,
    clothGrams: grams(yarns.reduce((sum, need) => sum + need.wovenGrams, 0) + warpShare * perMm),
    hours,
    arithmetic: [
      warp.arithmetic,
      ...piece.yarns.flatMap((yarn, index) => {
        const need = yarns[index];
        return need === undefined || need.metres === 0 ? [] : [needArithmetic(piece, yarn, need)];
      }),
      hours.arithmetic,
    ],
  };
}
