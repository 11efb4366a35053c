import { boundaryBetween, hasLinkedBoundary, risesTogether } from '../chart/boundaryKinds.ts';
import { clothGridOf, heightOfPasses } from '../chart/clothGrid.ts';
import { makeChart } from '../chart/makeChart.ts';
import type { Piece } from '../model/piece.ts';
import type { Block, Chart } from '../model/plan.ts';
import { buildBlocks, stintOfCells } from '../order/buildBlocks.ts';
import { orderStints } from '../order/orderStints.ts';
import { cutParts, mirrorParts } from '../order/parts.ts';
import { followWefts } from '../order/wefts.ts';
import { planJoins } from './planJoins.ts';
import { type WeavingWork, wovenWork } from './wovenWork.ts';

/** Whether the wefts on both sides of the border left of a cell are held together there, and so must rise together. */
function linkedBorder(piece: Piece, chart: Chart): (cell: number) => boolean {
  if (!hasLinkedBoundary(piece)) return () => false;
  return (cell) =>
    chart.cells[cell - 1] !== chart.cells[cell] &&
    risesTogether(boundaryBetween(piece, chart.areas[cell - 1]!, chart.areas[cell]!));
}

/**
 * The chart and order of a piece. Where the rest was planned anew on the way, what was woven by then keeps the plan it
 * was woven by, and the cartoon is laid above it over passes of the height measured then.
 */
export function weavingWork(piece: Piece): WeavingWork {
  const replans = piece.cloth.replans ?? [];
  const last = replans.at(-1);
  const before =
    last === undefined
      ? null
      : wovenWork(
          weavingWork({
            ...piece,
            cloth: { ...piece.cloth, passHeight: last.passHeightBefore, replans: replans.slice(0, -1) },
          }),
          last.passesDone,
        );
  const measured = last?.measured ?? null;
  const stepped =
    before === null || measured === null
      ? makeChart(piece)
      : makeChart(piece, { chart: before.stepped, rows: before.highest, measured });
  const { chart } = stepped;
  const grid = clothGridOf(piece, measured);
  const wefts = followWefts(stepped);
  const parts = cutParts(wefts, stepped.labels, chart.ends);
  const partner = mirrorParts(parts, wefts, chart.ends);
  const order = orderStints(wefts, parts, {
    ends: chart.ends,
    hillLimit: Math.max(2, Math.floor(piece.making.hillLimit / chart.passHeight)),
    linked: linkedBorder(piece, chart),
    partner,
    ...(before === null ? {} : { fell: before.fell }),
  });
  const heightOf = (passes: number) => heightOfPasses(grid, passes);
  const blocks = buildBlocks(piece, stepped, wefts, parts, partner, order, heightOf);
  const joins = planJoins(piece, chart, wefts, parts, order.stints);
  const sequence = order.together ? order.rows.map(({ stint, row }) => ({ block: stint, row })) : [];
  const owner = stintOfCells(stepped, wefts, parts, order.stints);
  if (before === null) return { stepped, wefts, blocks, sequence, joins, owner, measured };
  const shift = before.blocks.length;
  for (let cell = 0; cell < owner.length; cell++) {
    owner[cell] = owner[cell]! >= 0 ? owner[cell]! + shift : (before.owner[cell] ?? -1);
  }
  return {
    stepped,
    wefts,
    blocks: [...before.blocks, ...blocks.map((block) => shifted(block, shift))],
    sequence: [...before.sequence, ...sequence.map((step) => ({ ...step, block: step.block + shift }))],
    joins: [...before.joins, ...joins.map((join) => ({ ...join, block: join.block + shift }))],
    owner,
    measured,
  };
}

/** A block whose place and whose neighbours' places lie so much later in the order. */
const shifted = (block: Block, by: number): Block => ({
  ...block,
  order: block.order + by,
  after: block.after.map((other) => other + by),
  partner: block.partner === null ? null : block.partner + by,
  continues: block.continues === null ? null : block.continues + by,
  together: block.together.map((other) => other + by),
});
