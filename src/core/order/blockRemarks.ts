import { boundaryBetween } from '../chart/boundaryKinds.ts';
import type { SteppedChart } from '../chart/makeChart.ts';
import type { Boundary, Piece } from '../model/piece.ts';
import type { Chart } from '../model/plan.ts';
import type { Stint } from './orderStints.ts';
import type { WeftRow, Wefts } from './wefts.ts';

/**
 * Says so when a weft is fresh although its area goes on from below: where a cycle of neighbours leaves the weft below
 * travelling the same way as one beside it, it is ended and another begins from the other side, with a single pass.
 */
export function startRemarks(stepped: SteppedChart, wefts: Wefts, weft: number): readonly string[] {
  const { label, rows } = wefts.wefts[weft]!;
  const first = rows[0]!;
  if (first.pass === 0) return [];
  const { ends } = stepped.chart;
  let ended = false;
  for (let end = first.low; end <= first.high; end++) {
    const below = (first.pass - 1) * ends + end;
    if (stepped.labels[below] !== label) continue;
    // The weft below goes on elsewhere: the area parts here, and a second weft is what it takes.
    if (wefts.wefts[wefts.ofCell[below]!]!.rows.at(-1)!.pass >= first.pass) return [];
    ended = true;
  }
  if (!ended) return [];
  const side = first.right ? 'left' : 'right';
  return [
    `A fresh weft in the same area: the one below would not meet its neighbours. It begins with a single pass, from the ${side}.`,
  ];
}

/** Kinds of boundary that hold two wefts to each other, and what a hand does there. */
const links: readonly (readonly [Boundary, (where: string) => string])[] = [
  [
    'interlocked',
    (where) => `At ${where}, loop the weft through its neighbour's each time the two meet between their ends.`,
  ],
  [
    'shared-end',
    (where) => `At ${where}, where the edge stands upright, both wefts turn on one end, a turn each in alternation.`,
  ],
  [
    'dovetailed',
    (where) => `At ${where}, where the edge stands upright, both wefts turn on one end, several turns each.`,
  ],
];

/** Says what holds a block to the wefts that rise beside it; once where both edges are held alike. */
export function linkRemarks(piece: Piece, chart: Chart, rows: readonly WeftRow[]): readonly string[] {
  const [left, right] = (['left', 'right'] as const).map((side) => {
    const seen = new Set<Boundary>();
    for (const { pass, low, high } of rows) {
      const border = pass * chart.ends + (side === 'left' ? low : high + 1);
      if (side === 'left' ? low === 0 : high === chart.ends - 1) continue;
      if (chart.cells[border - 1] === chart.cells[border]) continue;
      seen.add(boundaryBetween(piece, chart.areas[border - 1]!, chart.areas[border]!));
    }
    return seen;
  });
  return links.flatMap(([kind, say]) => {
    const at = [left?.has(kind) === true, right?.has(kind) === true];
    if (at[0] && at[1]) return [say('both sides')];
    return at[0] ? [say('the left')] : at[1] ? [say('the right')] : [];
  });
}

/** Says why a block stops short of its area's end. */
export function stopRemarks(stint: Stint, stints: readonly Stint[], order: number): readonly string[] {
  switch (stint.stops) {
    case 'part ends':
      return [];
    case 'hill limit':
      return ['Stops here so that the hill stays low; it goes on when its neighbours have caught up.'];
    case 'keeps level':
      return ['Stops here to stay level with its other half.'];
    case 'waits for its neighbour':
      return ['Stops here because the weft beside it, which must rise with it, can go no higher yet.'];
    case 'rests on a neighbour': {
      const later = stints.findIndex((other, at) => at > order && other.part === stint.part);
      const on = later === -1 ? '' : ` It goes on as block ${later + 1}.`;
      return [`Stops here because its next pass lies on a neighbour not yet woven.${on}`];
    }
  }
}
