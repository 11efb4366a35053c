import { boundaryBetween, hasLinkedBoundary } from '../chart/boundaryKinds.ts';
import type { MeasuredCloth } from '../chart/clothGrid.ts';
import { chartFidelity } from '../chart/edgeErrors.ts';
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
import { findOverhangs, PARITY } from '../order/buildBlocks.ts';
import { findSlits } from '../order/slits.ts';
import { type OrnamentPlan, ornamentPlans } from '../ornaments/ornamentPlans.ts';
import { weavingWork } from './weavingWork.ts';

/** Everything worked out from a piece. */
export interface Plan {
  readonly chart: Chart;
  /** End i on pass j is woven over when (i + j) mod 2 is this. */
  readonly parity: 0 | 1;
  /** In weaving order. */
  readonly blocks: readonly Block[];
  /** Empty where blocks are woven one after another. */
  readonly sequence: readonly SequenceStep[];
  /** So many passes stand so high, where the rest was planned anew above them; null where every pass is as planned. */
  readonly measured: MeasuredCloth | null;
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

/** Whether the wefts are looped into each other at the border left of a cell, so that no slit is left there. */
function interlockedBorder(piece: Piece, chart: Chart): (cell: number) => boolean {
  if (!hasLinkedBoundary(piece)) return () => false;
  return (cell) => boundaryBetween(piece, chart.areas[cell - 1]!, chart.areas[cell]!) === 'interlocked';
}

/** Plans a piece: a pure function, so the same piece always gives the same plan. */
export function planPiece(piece: Piece): Plan {
  const { stepped, wefts, blocks, sequence, joins, owner, measured } = weavingWork(piece);
  const { chart } = stepped;
  const { edges, areas } = chartFidelity(piece, stepped, measured);
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
    sequence,
    measured,
    slits,
    overhangs: findOverhangs(blocks, owner, chart.ends),
    joins,
    marks: stringMarks(piece, stepped.drawnAreas, measured),
    edges,
    areas,
    materials,
    ornaments,
    hanging,
    finishing: finishingSteps(piece, hanging, materials.tails, slits),
    shopping: shoppingList(piece, materials, [...ornaments.flatMap((ornament) => ornament.toBuy), ...hanging.toBuy]),
  };
}
