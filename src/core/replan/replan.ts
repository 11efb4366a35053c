import { boundaryBetween, hasLinkedBoundary, risesTogether } from '../chart/boundaryKinds.ts';
import { clothGridOf, heightOfPasses, type MeasuredCloth } from '../chart/clothGrid.ts';
import { makeChart, type SteppedChart } from '../chart/makeChart.ts';
import { weftPerEnd } from '../materials/weftCrimp.ts';
import { workingHours } from '../materials/workingHours.ts';
import { failure, type Outcome, success } from '../model/outcome.ts';
import type { Piece } from '../model/piece.ts';
import type { Block, Chart, SequenceStep } from '../model/plan.ts';
import { type Metres, type Mm, metres, mm } from '../model/units.ts';
import { buildBlocks } from '../order/buildBlocks.ts';
import { orderStints } from '../order/orderStints.ts';
import { cutParts, mirrorParts } from '../order/parts.ts';
import { followWefts } from '../order/wefts.ts';
import { weftDiameter } from '../yarn/yarnDiameter.ts';
import { type Landing, landingsOf } from './landings.ts';

/** The loom as it stands. */
export interface LoomState {
  /** Passes that stand on each end, as the plan counts them. */
  readonly fell: readonly number[];
  /** A height measured on the cloth, mm above its base, and how many passes stand there. */
  readonly measured: MeasuredCloth;
  /** Height of a pass as it is really woven, which the rest is expected to keep. */
  readonly passHeight: Mm;
}

/** What is left to weave, planned anew. */
export interface Replan {
  /** The whole cloth: what stands as it was planned, the rest anew. */
  readonly chart: Chart;
  /** What is left, in weaving order. */
  readonly blocks: readonly Block[];
  readonly sequence: readonly SequenceStep[];
  /** Passes of the whole cloth. */
  readonly passes: { readonly planned: number; readonly now: number };
  /** Height of the whole cloth, mm: as planned, if the old plan is kept, and by this one. */
  readonly height: { readonly planned: number; readonly unchanged: number; readonly now: number };
  readonly landings: readonly Landing[];
  /** Weft still to be woven. */
  readonly yarns: readonly { readonly yarn: number; readonly planned: Metres; readonly now: Metres }[];
  /** Hours of weaving still to come. */
  readonly hours: { readonly planned: number; readonly now: number };
}

/**
 * Plans the rest of a piece anew, from what stands on the loom and the beat it was really woven with, so that every shape
 * still lands at its planned height. Up to the highest pass woven the old plan holds: what stands can't be moved, and
 * hollows beside it are filled as they were planned. Above, the cartoon is laid over passes of the measured height, and
 * wefts that hang on the loom go on the way they travel.
 * @returns `fell-splits-a-pass` when the passes on the ends are not those of a stop between passes of the plan.
 */
export function replan(piece: Piece, state: LoomState): Outcome<Replan, 'fell-splits-a-pass'> {
  const planned = makeChart(piece);
  const { ends } = planned.chart;
  if (state.fell.length !== ends || !stopsBetweenPasses(planned, state.fell)) {
    return failure(
      'fell-splits-a-pass',
      'What stands on the loom is not where the plan stops between two passes.',
      'Set the count of turns to where you are, then plan the rest again.',
    );
  }
  const asWoven: Piece = {
    ...piece,
    cloth: { ...piece.cloth, passHeight: state.passHeight, passHeightSource: 'measured' },
  };
  const rows = Math.max(...state.fell);
  const stepped = makeChart(asWoven, { chart: planned, rows, measured: state.measured });
  const { chart } = stepped;
  const work = (of: SteppedChart, from: Piece, heightOf: (passes: number) => number) => {
    const wefts = followWefts(of);
    const parts = cutParts(wefts, of.labels, ends);
    const partner = mirrorParts(parts, wefts, ends);
    const hillLimit = Math.max(2, Math.floor(piece.making.hillLimit / of.chart.passHeight));
    const linked = hasLinkedBoundary(piece)
      ? (cell: number) =>
          of.chart.cells[cell - 1] !== of.chart.cells[cell] &&
          risesTogether(boundaryBetween(piece, of.chart.areas[cell - 1]!, of.chart.areas[cell]!))
      : () => false;
    const order = orderStints(wefts, parts, { ends, hillLimit, linked, partner, fell: state.fell });
    return { order, blocks: buildBlocks(from, of, wefts, parts, partner, order, heightOf) };
  };
  const oldGrid = clothGridOf(piece);
  const newGrid = clothGridOf(asWoven, state.measured);
  const before = work(planned, piece, (passes) => heightOfPasses(oldGrid, passes));
  const now = work(stepped, asWoven, (passes) => heightOfPasses(newGrid, passes));
  return success({
    chart,
    blocks: now.blocks,
    sequence: now.order.together ? now.order.rows.map(({ stint, row }) => ({ block: stint, row })) : [],
    passes: { planned: planned.chart.passes, now: chart.passes },
    height: {
      planned: heightOfPasses(oldGrid, planned.chart.passes),
      unchanged: heightOfPasses(newGrid, planned.chart.passes),
      now: heightOfPasses(newGrid, chart.passes),
    },
    landings: landingsOf(piece, planned.chart, chart, oldGrid, newGrid),
    yarns: piece.yarns.map((_, yarn) => ({
      yarn,
      planned: weftLeft(piece, planned.chart, state.fell, yarn),
      now: weftLeft(asWoven, chart, state.fell, yarn),
    })),
    hours: {
      planned: workingHours(piece, before.blocks, [], 0).weaving,
      now: workingHours(asWoven, now.blocks, [], 0).weaving,
    },
  });
}

/** Whether every row of the plan is either woven on all its ends or on none. */
function stopsBetweenPasses(planned: SteppedChart, fell: readonly number[]): boolean {
  const { ends, passes } = planned.chart;
  if (fell.some((count) => count < 0 || count > passes || !Number.isInteger(count))) return false;
  for (let end = 1; end < ends; end++) {
    const low = Math.min(fell[end - 1]!, fell[end]!);
    const high = Math.max(fell[end - 1]!, fell[end]!);
    for (let pass = low; pass < high; pass++) {
      if (planned.labels[pass * ends + end] === planned.labels[pass * ends + end - 1]) return false;
    }
  }
  return true;
}

/** Weft still to go into a chart, without turns and tails, which hardly change. */
function weftLeft(piece: Piece, chart: Chart, fell: readonly number[], yarn: number): Metres {
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
