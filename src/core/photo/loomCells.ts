import { notchX, type WoodShape } from './coarseCamera.ts';
import type { Expected } from './expected.ts';
import type { FlatLoom } from './flatLoom.ts';

/** What lies on the loom and stays there from picture to picture. */
export type CellZone = 'bottom bar' | 'top bar' | 'left rail' | 'right rail' | 'cloth';
export const cellZones: readonly CellZone[] = ['bottom bar', 'top bar', 'left rail', 'right rail', 'cloth'];

/** A rectangle of wood or cloth, loom mm. */
export interface LoomCell {
  readonly zone: CellZone;
  readonly x: number;
  readonly y: number;
  readonly halfWidth: number;
  readonly halfHeight: number;
}

/** About how large a cell is, mm: some floats, some lines of the grain. */
const SIZE = 12;
/** Narrower strips of wood hold too little grain, mm. */
const LEAST = 5;
/** Wood this near to an edge is shade and rounding rather than grain, mm. */
const EDGE = 2.5;
/** Beside the inner edge stand notches or nails, which look alike and stand higher than the bar, mm; and as a share of the bar. */
const NOTCHED = 14;
const MOST_NOTCHED = 0.6;
/** The last passes below the fell still move when the next ones are beaten in, mm. */
const UNSETTLED = 4;

/** Cells of a rectangle. */
function tiled(zone: CellZone, left: number, right: number, bottom: number, top: number): LoomCell[] {
  const columns = Math.max(1, Math.round((right - left) / SIZE));
  const rows = Math.max(1, Math.round((top - bottom) / SIZE));
  const halfWidth = (right - left) / columns / 2;
  const halfHeight = (top - bottom) / rows / 2;
  if (Math.min(halfWidth, halfHeight) < LEAST / 2) return [];
  return Array.from({ length: columns * rows }, (_, k) => ({
    zone,
    x: left + (2 * (k % columns) + 1) * halfWidth,
    y: bottom + (2 * Math.floor(k / columns) + 1) * halfHeight,
    halfWidth,
    halfHeight,
  }));
}

/**
 * Wood without its notches, and cloth below the fell.
 * @param fells of the ends, loom y; null where it isn't known.
 */
export function loomCells(expected: Expected, fells: readonly (number | null)[]): LoomCell[] {
  const { openingWidth, openingHeight, bar, base, pitch } = expected;
  const half = openingWidth / 2;
  const [inner, outer] = [half + EDGE, half + bar - EDGE];
  const notched = Math.min(NOTCHED, MOST_NOTCHED * bar);
  const wood = [
    ...tiled('bottom bar', -outer, outer, -bar + EDGE, -notched),
    ...tiled('top bar', -outer, outer, openingHeight + notched, openingHeight + bar - EDGE),
    ...tiled('left rail', -outer, -inner, EDGE, openingHeight - EDGE),
    ...tiled('right rail', inner, outer, EDGE, openingHeight - EDGE),
  ];
  const known = fells.filter((fell) => fell !== null);
  if (known.length < 2) return wood;
  const left = notchX(expected, expected.firstNotch);
  const right = notchX(expected, expected.firstNotch + expected.ends - 1);
  const top = Math.max(...known) - UNSETTLED;
  const covered = (cell: LoomCell): boolean =>
    fells.every((fell, end) => {
      const x = left + end * pitch;
      if (Math.abs(x - cell.x) > cell.halfWidth + pitch / 2) return true;
      return fell !== null && fell - UNSETTLED >= cell.y + cell.halfHeight - 0.5;
    });
  const cloth = top - base > SIZE / 2 ? tiled('cloth', left, right, base, top) : [];
  return [...wood, ...cloth.filter(covered)];
}

/** Of the faces that are seen, above the plane of the strings, mm, and how well that is known beside the wood's own shape. */
export interface FaceHeight {
  readonly z: number;
  readonly sigma: number;
}

/** Strings lie on the bars, but notches may be cut deep (values from memory), mm. */
const BARS_SIGMA = 0.7;
const RAILS_SIGMA = 0.3;
/** Weft bows over the strings by about half a string and its own thickness: a share of the pitch (value from memory). */
const CREST = 0.4;
const CREST_SIGMA = 0.12;

/** Where a zone's face lies: bars under the strings, rails let in by the wood's fitted depth, crests over the strings. */
export function faceHeight(zone: CellZone, expected: Expected, wood: WoodShape): FaceHeight {
  const under = -expected.stringDiameter / 2;
  if (zone === 'cloth') return { z: CREST * expected.pitch, sigma: CREST_SIGMA * expected.pitch };
  if (zone === 'left rail' || zone === 'right rail') return { z: under - wood[2], sigma: RAILS_SIGMA };
  return { z: under, sigma: BARS_SIGMA };
}

/** The zone that a place of the loom belongs to, its surroundings included. */
export function zoneAt(expected: Expected, x: number, y: number): CellZone {
  if (y < 0) return 'bottom bar';
  if (y > expected.openingHeight) return 'top bar';
  if (x < -expected.openingWidth / 2) return 'left rail';
  if (x > expected.openingWidth / 2) return 'right rail';
  return 'cloth';
}

/** 1 for pixels that lie in a cell or within `around` mm of one, and in the picture. */
export function withinCells(
  { grid, seen }: Pick<FlatLoom, 'grid' | 'seen'>,
  cells: readonly LoomCell[],
  around: number,
): Uint8Array {
  const { left, top, pxPerMm, width, height } = grid;
  const within = new Uint8Array(width * height);
  for (const { x, y, halfWidth, halfHeight } of cells) {
    const first = Math.max(0, Math.round((x - halfWidth - around - left) * pxPerMm));
    const end = Math.min(width, Math.round((x + halfWidth + around - left) * pxPerMm) + 1);
    const upper = Math.max(0, Math.round((top - y - halfHeight - around) * pxPerMm));
    const lower = Math.min(height - 1, Math.round((top - y + halfHeight + around) * pxPerMm));
    for (let row = upper; row <= lower; row++) within.fill(1, row * width + first, row * width + end);
  }
  return within.map((value, i) => value & seen[i]!);
}
