import type { Piece } from '../model/piece.ts';
import { MM_PER_INCH } from '../model/units.ts';
import type { AreaBudget } from './areaBudget.ts';
import { boundaryBetween, hasLinkedBoundary, risesTogether, upperShape } from './boundaryKinds.ts';
import type { ClothGrid } from './clothGrid.ts';
import { type Orientation, turned } from './orientation.ts';
import { sampleAreas, sampleColumns } from './sampleAreas.ts';
import { shareEnds } from './sharedEnds.ts';
import type { BorderRules, Stepped } from './turnStepping.ts';

const never = (): boolean => false;

/** What the borders of the turned drawing ask of its edges. */
export function borderRules(
  piece: Piece,
  drawnAreas: Uint16Array,
  ends: number,
  orientation: Orientation,
): BorderRules {
  const linked = hasLinkedBoundary(piece);
  const fine = piece.shapes.some((shape) => !shape.hidden && shape.singlePass);
  if (!linked && !fine) return { mustMeet: never, toThePass: never };
  const areas = turned(drawnAreas, ends, orientation);
  return {
    mustMeet: linked ? (cell) => risesTogether(boundaryBetween(piece, areas[cell - 1]!, areas[cell]!)) : never,
    toThePass: fine ? (cell) => upperShape(piece, areas[cell - 1]!, areas[cell]!)?.singlePass === true : never,
  };
}

/** Ends to the inch under which a dovetail locks at every second turn; above it at every fourth. Common practice. */
const COARSE_SETT = 10;

/**
 * Shares ends along the borders that ask for it, in the turned chart.
 * @param areas of the stepped cells, turned as they are.
 * @param firstRow rows below it are left as they are.
 * @returns 1 for every cell of a shared end woven by the neighbour, as the chart lies turned.
 */
export function linkBorders(
  piece: Piece,
  grid: ClothGrid,
  stepped: Stepped,
  areas: Uint16Array,
  orientation: Orientation,
  budget: AreaBudget,
  firstRow: number,
): Uint8Array {
  // What lies at the border itself says on which side of it the line runs. Turned sideways, the border left of an end is
  // the border right of its image.
  const borders = sampleAreas(piece, grid, sampleColumns(grid, orientation.flipX ? 0.5 : -0.5));
  const atBorder = turned(borders, grid.ends, orientation);
  const dovetail = MM_PER_INCH / grid.pitch < COARSE_SETT ? 2 : 4;
  return shareEnds(stepped, firstRow, {
    turnsInTooth: (cell) => {
      const boundary = boundaryBetween(piece, areas[cell - 1]!, areas[cell]!);
      return boundary === 'shared-end' ? 1 : boundary === 'dovetailed' ? dovetail : 0;
    },
    leansRight: (cell) => atBorder[cell] === areas[cell - 1],
    areaOf: (cell) => areas[cell]!,
    budget,
  });
}
