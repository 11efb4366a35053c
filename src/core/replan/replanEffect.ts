import { clothGridOf, heightOfPasses, type MeasuredCloth } from '../chart/clothGrid.ts';
import { weftPerEnd } from '../materials/weftCrimp.ts';
import { workingHours } from '../materials/workingHours.ts';
import type { Piece } from '../model/piece.ts';
import type { Block, Chart } from '../model/plan.ts';
import { type Metres, metres, mm } from '../model/units.ts';
import { weftDiameter } from '../yarn/yarnDiameter.ts';
import { type Landing, landingsOf } from './landings.ts';

/** A piece with its plan, as far as a comparison needs it. */
export interface PlannedWork {
  readonly piece: Piece;
  readonly chart: Chart;
  readonly measured: MeasuredCloth | null;
  readonly blocks: readonly Block[];
}

/** What planning the rest anew changes. */
export interface ReplanEffect {
  /** Passes of the whole cloth. */
  readonly passes: { readonly planned: number; readonly now: number };
  /** Height of the whole cloth, mm: as planned, if the old plan is kept with the beat as it is, and by the new plan. */
  readonly height: { readonly planned: number; readonly unchanged: number; readonly now: number };
  /** Where every shape that shows lands. */
  readonly landings: readonly Landing[];
  /** Weft still to be woven, by the place of its yarn; without turns and tails, which hardly change. */
  readonly yarns: readonly { readonly yarn: number; readonly planned: Metres; readonly now: Metres }[];
  /** Hours of weaving still to come. */
  readonly hours: { readonly planned: number; readonly now: number };
}

/**
 * Compares a plan with the one that takes its place part way up: where shapes land, what is left to weave.
 * @param fell passes that stand on each end.
 */
export function replanEffect(before: PlannedWork, after: PlannedWork, fell: ArrayLike<number>): ReplanEffect {
  const planned = clothGridOf(before.piece, before.measured);
  const asWoven = clothGridOf(after.piece, after.measured);
  return {
    passes: { planned: before.chart.passes, now: after.chart.passes },
    height: {
      planned: heightOfPasses(planned, before.chart.passes),
      unchanged: heightOfPasses(asWoven, before.chart.passes),
      now: heightOfPasses(asWoven, after.chart.passes),
    },
    landings: landingsOf(before.piece, before.chart, after.chart, planned, asWoven),
    yarns: before.piece.yarns.map((_, yarn) => ({
      yarn,
      planned: weftLeft(before, fell, yarn),
      now: weftLeft(after, fell, yarn),
    })),
    hours: { planned: hoursLeft(before, fell), now: hoursLeft(after, fell) },
  };
}

function weftLeft({ piece, chart }: PlannedWork, fell: ArrayLike<number>, yarn: number): Metres {
  let cells = 0;
  for (let cell = 0; cell < chart.cells.length; cell++) {
    if (chart.cells[cell] === yarn && Math.floor(cell / chart.ends) >= fell[cell % chart.ends]!) cells++;
  }
  const perEnd = weftPerEnd({
    pitch: piece.loom.notchPitch,
    stringDiameter: piece.warp.stringDiameter,
    stringsPerEnd: piece.warp.stringsPerEnd,
    weftDiameter: weftDiameter(piece.yarns[yarn]!)?.diameter ?? mm(2 * piece.cloth.passHeight),
  }).length;
  return metres((cells * perEnd * piece.yarns[yarn]!.strands) / 1000);
}

function hoursLeft({ piece, blocks }: PlannedWork, fell: ArrayLike<number>): number {
  const left = blocks.map((block) => ({ ...block, rows: block.rows.filter(({ pass, from }) => pass >= fell[from]!) }));
  return workingHours(piece, left, [], 0).weaving;
}
