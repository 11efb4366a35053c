import { chartFidelity } from '../chart/edgeErrors.ts';
import { makeChart } from '../chart/makeChart.ts';
import { stringMarks } from '../chart/stringMarks.ts';
import { type Materials, materialsOf } from '../materials/materials.ts';
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
import { buildBlocks, findOverhangs, PARITY, stintOfCells } from '../order/buildBlocks.ts';
import { orderStints } from '../order/orderStints.ts';
import { cutParts, mirrorParts } from '../order/parts.ts';
import { findSlits } from '../order/slits.ts';
import { followWefts } from '../order/wefts.ts';
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
}

/** Plans a piece: a pure function, so the same piece always gives the same plan. */
export function planPiece(piece: Piece): Plan {
  const stepped = makeChart(piece);
  const { chart } = stepped;
  const wefts = followWefts(stepped);
  const parts = cutParts(wefts, stepped.labels, chart.ends);
  const partner = mirrorParts(parts, wefts, chart.ends);
  const hillLimit = Math.max(2, Math.floor(piece.making.hillLimit / chart.passHeight));
  const stints = orderStints(wefts, parts, partner, chart.ends, hillLimit);
  const blocks = buildBlocks(piece, stepped, wefts, parts, partner, stints);
  const joins = planJoins(piece, chart, wefts, parts, stints);
  const { edges, areas } = chartFidelity(piece, chart);
  return {
    chart,
    parity: PARITY,
    blocks,
    sequence: [],
    slits: findSlits(piece, stepped, wefts, () => false),
    overhangs: findOverhangs(blocks, stintOfCells(stepped, wefts, parts, stints), chart.ends),
    joins,
    marks: stringMarks(piece, stepped.drawnAreas),
    edges,
    areas,
    materials: materialsOf(piece, chart, blocks, joins),
  };
}
