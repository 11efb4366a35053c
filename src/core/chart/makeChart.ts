import type { Piece } from '../model/piece.ts';
import { BARE, type Chart, HEADER_AREA } from '../model/plan.ts';
import { mm } from '../model/units.ts';
import { areaBudget } from './areaBudget.ts';
import { areasOfSteps } from './areasOfSteps.ts';
import { hasLinkedBoundary } from './boundaryKinds.ts';
import { clothGridOf, type MeasuredCloth } from './clothGrid.ts';
import { keepAreas } from './keepAreas.ts';
import { borderRules, linkBorders } from './linkBorders.ts';
import { AS_IT_LIES, firstOrientation, turned } from './orientation.ts';
import { sampleAreas } from './sampleAreas.ts';
import { type ShownAreas, shownAreas } from './shownAreas.ts';
import { stepByTurns } from './turnStepping.ts';

/** Labels of header and footer cells are lifted over those of the body: they are woven apart even in the same yarn. */
const APART = 256;

/** A chart that a hand can weave, with what the order of work needs of it. */
export interface SteppedChart {
  readonly chart: Chart;
  /** The drawing as sampled, before its edges were stepped: areas as in `Chart.areas`. */
  readonly drawnAreas: Uint16Array;
  /** The same by what is woven apart: one label for each yarn of the body, others for header and footer. */
  readonly drawnLabels: Uint16Array;
  /** Cells of one label are woven by one weft where they lie side by side. */
  readonly labels: Uint16Array;
  /** For every cell 1 where its weft travels right, else 0. */
  readonly right: Uint8Array;
  /** For every cell 1 where the weft beside it weaves an end the two share, else 0. */
  readonly shared: Uint8Array;
  /** What shows of every area in the drawing itself. */
  readonly shown: ShownAreas;
}

/** Index of a yarn by its id; the first yarn when a piece names one it hasn't got, which the piece's validator refuses. */
const yarnIndex = (piece: Piece, id: string): number =>
  Math.max(
    0,
    piece.yarns.findIndex((yarn) => yarn.id === id),
  );

/** Yarn of every area: `[ground, shape 0, shape 1 …]` and apart the header's. */
function yarnsOfAreas(piece: Piece): { readonly body: Uint16Array; readonly header: number } {
  const body = new Uint16Array(piece.shapes.length + 1);
  body[0] = yarnIndex(piece, piece.cloth.ground);
  piece.shapes.forEach((shape, index) => {
    body[index + 1] = yarnIndex(piece, shape.yarn);
  });
  return { body, header: yarnIndex(piece, piece.cloth.headerYarn) };
}

/** Rows that stand on the loom, when the rest is planned anew above them. */
export interface WovenCloth {
  /** The stepped chart they belong to, and how many of its rows to keep. */
  readonly chart: SteppedChart;
  readonly rows: number;
  readonly measured: MeasuredCloth;
}

/**
 * The chart of a piece: the drawing on the warp, its edges stepped by whole turns. A pure function of the piece and
 * quick enough to run while a shape is dragged.
 * @param woven rows already on the loom, kept as they are; the drawing is laid over the passes above them, at the heights
 * they will really have.
 */
export function makeChart(piece: Piece, woven: WovenCloth | null = null): SteppedChart {
  const grid = clothGridOf(piece, woven?.measured ?? null);
  const { ends } = grid;
  const passes = Math.max(grid.passes, woven?.rows ?? 0);
  const kept = (woven?.rows ?? 0) * ends;
  const drawnAreas = sampleAreas(piece, { ...grid, passes });
  const { body, header } = yarnsOfAreas(piece);
  const drawnLabels = new Uint16Array(drawnAreas.length);
  for (let cell = kept; cell < drawnAreas.length; cell++) {
    const area = drawnAreas[cell]!;
    drawnLabels[cell] = area === HEADER_AREA ? APART + header : body[area]!;
  }
  if (woven !== null) {
    drawnAreas.set(woven.chart.chart.areas.subarray(0, kept));
    drawnLabels.set(woven.chart.labels.subarray(0, kept));
  }
  const orientation = woven === null ? firstOrientation(drawnLabels, ends) : AS_IT_LIES;
  const stepped = stepByTurns(
    turned(drawnLabels, ends, orientation),
    ends,
    borderRules(piece, drawnAreas, ends, orientation),
    woven === null ? null : { rows: woven.rows, right: woven.chart.right },
  );
  const whole = { ...grid, passes };
  const firstRow = woven?.rows ?? 0;
  const steppedAreas = () => areasOfSteps(turned(stepped.labels, ends, orientation), drawnAreas, drawnLabels, ends);
  let areas = steppedAreas();
  const shown = shownAreas(piece, whole);
  const budget = areaBudget(shown, drawnAreas, areas, ends);
  if (piece.shapes.some((_, index) => budget.excess(index + 1) > 0)) {
    const drawn = { labels: turned(drawnLabels, ends, orientation), areas: turned(drawnAreas, ends, orientation) };
    const changed = keepAreas(budget, stepped, drawn, turned(areas, ends, orientation), firstRow);
    if (changed) areas = steppedAreas();
  }
  let shared: Uint8Array = new Uint8Array(drawnLabels.length);
  if (hasLinkedBoundary(piece)) {
    shared = linkBorders(piece, whole, stepped, turned(areas, ends, orientation), orientation, budget, firstRow);
    areas = steppedAreas();
  }
  if (woven !== null) shared.set(woven.chart.shared.subarray(0, kept));
  const labels = turned(stepped.labels, ends, orientation);
  let right = turned(stepped.right, ends, orientation);
  // Seen in a mirror, or read from the end back, a weft travels the other way.
  if (orientation.flipX !== orientation.flipY) right = right.map((way) => 1 - way);
  const cells = new Uint8Array(labels.length);
  for (let cell = 0; cell < cells.length; cell++) cells[cell] = Math.min(BARE - 1, labels[cell]! % APART);
  return {
    chart: { ends, passes, pitch: mm(grid.pitch), passHeight: mm(grid.passHeight), cells, areas },
    drawnAreas,
    drawnLabels,
    labels,
    right,
    shared: turned(shared, ends, orientation),
    shown,
  };
}
