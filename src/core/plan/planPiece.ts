import { boundaryBetween, hasLinkedBoundary, risesTogether } from '../chart/boundaryKinds.ts';
import { chartFidelity } from '../chart/edgeErrors.ts';
import { makeChart } from '../chart/makeChart.ts';
import { stringMarks } from '../chart/stringMarks.ts';
import { type FinishingStep, finishingSteps } from '../hanging/finishing.ts';
import { type Hanging, hangingOf } from '../hanging/hanging.ts';
import { type Materials, materialsOf } from '../materials/materials.ts';
import { type ShoppingLine, shoppingList } from '../materials/shoppingList.ts';
import type { Piece } from '../model/piece.ts';
import type {
  Block,
  Chart,
  EdgeError,
  Join,
  Overhang,
  SequenceStep,
  ShapeArea,
  Slit,
  StringMarks,
} from '../model/plan.ts';
import { grams } from '../model/units.ts';
import { buildBlocks, findOverhangs, PARITY, stintOfCells } from '../order/buildBlocks.ts';
import { orderStints } from '../order/orderStints.ts';
import { cutParts, mirrorParts } from '../order/parts.ts';
import { findSlits } from '../order/slits.ts';
import { followWefts } from '../order/wefts.ts';
import { type OrnamentPlan, ornamentPlans } from '../ornaments/ornamentPlans.ts';
import { planJoins } from './planJoins.ts';

/** Everything worked out from a piece. */
export interface Plan {
  readonly chart: Chart;
  /** End i on pass j is woven over when (i + j) mod 2 is this. */
  readonly parity: 0 | 1;
  /** In weaving order. */
  readonly blocks: readonly Block[];
  /** Empty where blocks are woven one after another. */
  readonly sequence: readonly SequenceStep[];
  readonly slits: readonly Slit[];
  readonly overhangs: readonly Overhang[];
  readonly joins: readonly Join[];
  readonly marks: readonly StringMarks[];
  readonly edges: readonly EdgeError[];
  readonly areas: readonly ShapeArea[];
  readonly materials: Materials;
  readonly ornaments: readonly OrnamentPlan[];
  readonly hanging: Hanging;
  readonly finishing: readonly FinishingStep[];
  readonly shopping: readonly ShoppingLine[];
}

/** Whether the wefts on both sides of the border left of a cell are held together there, and so must rise together. */
function linkedBorder(piece: Piece, chart: Chart): (cell: number) => boolean {
  if (!hasLinkedBoundary(piece)) return () => false;
  return (cell) =>
    chart.cells[cell - 1] !== chart.cells[cell] &&
    risesTogether(boundaryBetween(piece, chart.areas[cell - 1]!, chart.areas[cell]!));
}

/** Whether the wefts are looped into each other at the border left of a cell, so that no slit is left there. */
function interlockedBorder(piece: Piece, chart: Chart): (cell: number) => boolean {
  if (!hasLinkedBoundary(piece)) return () => false;
  return (cell) => boundaryBetween(piece, chart.areas[cell - 1]!, chart.areas[cell]!) === 'interlocked';
}

/** Plans a piece: a pure function, so the same piece always gives the same plan. */
export function planPiece(piece: Piece): Plan {
  const stepped = makeChart(piece);
  const { chart } = stepped;
  const wefts = followWefts(stepped);
  const parts = cutParts(wefts, stepped.labels, chart.ends);
  const partner = mirrorParts(parts, wefts, chart.ends);
  const hillLimit = Math.max(2, Math.floor(piece.making.hillLimit / chart.passHeight));
  const linked = linkedBorder(piece, chart);
  const order = orderStints(wefts, parts, { ends: chart.ends, hillLimit, linked, partner });
  const { stints } = order;
  const blocks = buildBlocks(piece, stepped, wefts, parts, partner, order, (passes) => passes * chart.passHeight);
  const joins = planJoins(piece, chart, wefts, parts, stints);
  const { edges, areas } = chartFidelity(piece, chart);
  const slits = findSlits(piece, stepped, wefts, interlockedBorder(piece, chart));
  const ornaments = ornamentPlans(piece);
  const extras = ornaments.flatMap((ornament) => ornament.extras);
  const materials = materialsOf(piece, chart, blocks, joins, extras);
  const load = ornaments.reduce<number>((sum, ornament) => sum + ornament.fibre, materials.clothGrams);
  const hanging = hangingOf(piece, materials.warp, grams(load));
  return {
    chart,
    parity: PARITY,
    blocks,
    sequence: order.together ? order.rows.map(({ stint, row }) => ({ block: stint, row })) : [],
    slits,
    overhangs: findOverhangs(blocks, stintOfCells(stepped, wefts, parts, stints), chart.ends),
    joins,
    marks: stringMarks(piece, stepped.drawnAreas),
    edges,
    areas,
    materials,
    ornaments,
    hanging,
    finishing: finishingSteps(piece, hanging, materials.tails, slits),
    shopping: shoppingList(piece, materials, [...ornaments.flatMap((ornament) => ornament.toBuy), ...hanging.toBuy]),
  };
}
