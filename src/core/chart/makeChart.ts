import type { Piece } from '../model/piece.ts';
import { BARE, type Chart, HEADER_AREA } from '../model/plan.ts';
import { MM_PER_INCH, mm } from '../model/units.ts';
import { boundaryBetween, hasLinkedBoundary, risesTogether } from './boundaryKinds.ts';
import { type ClothGrid, clothGridOf } from './clothGrid.ts';
import { firstOrientation, type Orientation, turned } from './orientation.ts';
import { sampleAreas, sampleColumns } from './sampleAreas.ts';
import { shareEnds } from './sharedEnds.ts';
import { type Stepped, stepByTurns } from './turnStepping.ts';

/** Labels of header and footer cells are lifted over those of the body: they are woven apart even in the same yarn. */
const APART = 256;

/** A chart that a hand can weave, with what the order of work needs of it. */
export interface SteppedChart {
  readonly chart: Chart;
  /** The drawing as sampled, before its edges were stepped: areas as in `Chart.areas`. */
  readonly drawnAreas: Uint16Array;
  /** Cells of one label are woven by one weft where they lie side by side. */
  readonly labels: Uint16Array;
  /** For every cell 1 where its weft travels right, else 0. */
  readonly right: Uint8Array;
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

/**
 * The area of every stepped cell: what was drawn there where the yarn is the same, else the nearest cell's in the same
 * run, else (a whole run moved by a pass) the one just above or below.
 */
function areasOfSteps(labels: Uint16Array, drawn: Uint16Array, drawnLabels: Uint16Array, ends: number): Uint16Array {
  const areas = new Uint16Array(drawn.length);
  const passes = drawn.length / ends;
  for (let pass = 0; pass < passes; pass++) {
    for (let start = 0; start < ends; ) {
      const base = pass * ends;
      const label = labels[base + start]!;
      let stop = start + 1;
      while (stop < ends && labels[base + stop] === label) stop++;
      let known = -1;
      for (let end = start; end < stop; end++) {
        if (drawnLabels[base + end] === label) {
          areas[base + end] = drawn[base + end]!;
          if (known === -1) areas.fill(areas[base + end]!, base + start, base + end);
          known = areas[base + end]!;
        } else if (known !== -1) areas[base + end] = known;
      }
      if (known === -1) {
        for (let away = 1; known === -1 && away < passes; away++) {
          for (const row of [pass - away, pass + away]) {
            for (let end = start; end < stop && known === -1 && row >= 0 && row < passes; end++) {
              if (drawnLabels[row * ends + end] === label) known = drawn[row * ends + end]!;
            }
          }
        }
        areas.fill(Math.max(0, known), base + start, base + stop);
      }
      start = stop;
    }
  }
  return areas;
}

/** Whether the border left of a cell, in the turned drawing, asks for wefts that rise together. */
function linkedBorders(
  piece: Piece,
  drawnAreas: Uint16Array,
  ends: number,
  orientation: Orientation,
): (cell: number) => boolean {
  if (!hasLinkedBoundary(piece)) return () => false;
  const areas = turned(drawnAreas, ends, orientation);
  return (cell) => risesTogether(boundaryBetween(piece, areas[cell - 1]!, areas[cell]!));
}

/** Ends to the inch under which a dovetail locks at every second turn; above it at every fourth. Common practice. */
const COARSE_SETT = 10;

/** Shares ends along the borders that ask for it, in the turned chart. */
function linkBorders(
  piece: Piece,
  grid: ClothGrid,
  stepped: Stepped,
  drawnAreas: Uint16Array,
  drawnLabels: Uint16Array,
  orientation: Orientation,
): void {
  const { ends } = grid;
  const areas = turned(
    areasOfSteps(turned(stepped.labels, ends, orientation), drawnAreas, drawnLabels, ends),
    ends,
    orientation,
  );
  // What lies at the border itself says on which side of it the line runs. Turned sideways, the border left of an end is
  // the border right of its image.
  const borders = sampleAreas(piece, grid, sampleColumns(grid, orientation.flipX ? 0.5 : -0.5));
  const atBorder = turned(borders, ends, orientation);
  const dovetail = MM_PER_INCH / grid.pitch < COARSE_SETT ? 2 : 4;
  shareEnds(stepped, {
    turnsInTooth: (cell) => {
      const boundary = boundaryBetween(piece, areas[cell - 1]!, areas[cell]!);
      return boundary === 'shared-end' ? 1 : boundary === 'dovetailed' ? dovetail : 0;
    },
    leansRight: (cell) => atBorder[cell] === areas[cell - 1],
  });
}

/**
 * The chart of a piece: the drawing on the warp, its edges stepped by whole turns. A pure function of the piece and
 * quick enough to run while a shape is dragged.
 */
export function makeChart(piece: Piece): SteppedChart {
  const grid = clothGridOf(piece);
  const { ends, passes } = grid;
  const drawnAreas = sampleAreas(piece, grid);
  const { body, header } = yarnsOfAreas(piece);
  const drawnLabels = new Uint16Array(drawnAreas.length);
  for (let cell = 0; cell < drawnAreas.length; cell++) {
    const area = drawnAreas[cell]!;
    drawnLabels[cell] = area === HEADER_AREA ? APART + header : body[area]!;
  }
  const orientation = firstOrientation(drawnLabels, ends);
  const stepped = stepByTurns(
    turned(drawnLabels, ends, orientation),
    ends,
    linkedBorders(piece, drawnAreas, ends, orientation),
  );
  if (hasLinkedBoundary(piece)) linkBorders(piece, grid, stepped, drawnAreas, drawnLabels, orientation);
  const labels = turned(stepped.labels, ends, orientation);
  let right = turned(stepped.right, ends, orientation);
  // Seen in a mirror, or read from the end back, a weft travels the other way.
  if (orientation.flipX !== orientation.flipY) right = right.map((way) => 1 - way);
  const areas = areasOfSteps(labels, drawnAreas, drawnLabels, ends);
  const cells = new Uint8Array(labels.length);
  for (let cell = 0; cell < cells.length; cell++) cells[cell] = Math.min(BARE - 1, labels[cell]! % APART);
  return {
    chart: { ends, passes, pitch: mm(grid.pitch), passHeight: mm(grid.passHeight), cells, areas },
    drawnAreas,
    labels,
    right,
  };
}
