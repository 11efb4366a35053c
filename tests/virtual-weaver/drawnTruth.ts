import type { BriefPiece, BriefShape } from './briefPieces.ts';

/*
 * What a flat description draws, found without any of the planner's geometry: whether a point lies in a shape, by
 * counting sides it sees to its right, and where sides run.
 */

function holds(shape: BriefShape, x: number, y: number): boolean {
  if (shape.kind === 'band') return y >= Math.min(...shape.y) && y < Math.max(...shape.y);
  if (shape.kind === 'circle') return (x - shape.c[0]) ** 2 + (y - shape.c[1]) ** 2 < shape.r ** 2;
  // Polygons are filled where their sides wind round a point, whichever way.
  let winding = 0;
  shape.pts.forEach(([toX, toY], at) => {
    const [fromX, fromY] = shape.pts[(at || shape.pts.length) - 1]!;
    if (fromY <= y === toY <= y) return;
    if (fromX + ((y - fromY) / (toY - fromY)) * (toX - fromX) > x) winding += toY > fromY ? 1 : -1;
  });
  return winding !== 0;
}

/** Where a level line at y crosses the sides of a shape, in any order. */
function crossings(shape: BriefShape, y: number): number[] {
  if (shape.kind === 'band') return [];
  if (shape.kind === 'circle') {
    const half = Math.sqrt(Math.max(0, shape.r ** 2 - (y - shape.c[1]) ** 2));
    return [shape.c[0] - half, shape.c[0] + half];
  }
  return shape.pts.flatMap(([toX, toY], at) => {
    const [fromX, fromY] = shape.pts[(at || shape.pts.length) - 1]!;
    return fromY <= y === toY <= y ? [] : [fromX + ((y - fromY) / (toY - fromY)) * (toX - fromX)];
  });
}

/** Level lines looked at on every pass. */
export const LINES_A_PASS = 24;

/** In ends and passes. */
const HAIRS = [-1e-6, 1e-6].flatMap((dx) => [-1e-6, 1e-6].map((dy) => [dx, dy] as const));

/** What a shape shows, in cells; rows of the header left out. */
export interface Shown {
  /** Area of the drawing, exact along each of the level lines. */
  readonly drawn: number;
  /** Cells whose middles it covers, taken a hair to each of four sides: an edge may run through the very middle. */
  readonly middles: readonly number[];
  /** Passes on which it ends inside the cloth. */
  readonly rows: number;
}

/** What shows of every shape of a description. */
export function shownOf({ shapes, ends, pitch, passes, passHeight, header }: BriefPiece): Shown[] {
  const seen = shapes.map(() => ({ drawn: 0, middles: HAIRS.map(() => 0), rows: new Set<number>() }));
  const right = (ends * pitch) / 2;
  const topmost = (x: number, y: number) => seen[shapes.findIndex((shape) => holds(shape, x, y))];
  for (let row = header; row < passes; row += 1) {
    for (let line = 0; line < LINES_A_PASS; line += 1) {
      const y = (row + (line + 0.5) / LINES_A_PASS) * passHeight;
      const inside = shapes.flatMap((shape) => crossings(shape, y)).filter((x) => Math.abs(x) < right);
      const places = [-right, ...inside, right].sort((one, other) => one - other);
      places.slice(1).forEach((to, at) => {
        const from = places[at]!;
        const shape = to > from ? topmost((from + to) / 2, y) : undefined;
        if (shape === undefined) return;
        shape.drawn += (to - from) / pitch / LINES_A_PASS;
        if (places.length > 2) shape.rows.add(row);
      });
    }
    for (let end = 0; end < ends; end += 1) {
      HAIRS.forEach(([dx, dy], side) => {
        const shape = topmost((end + 0.5 + dx - ends / 2) * pitch, (row + 0.5 + dy) * passHeight);
        if (shape !== undefined) shape.middles[side]! += 1;
      });
    }
  }
  return seen.map((shape) => ({ ...shape, rows: shape.rows.size }));
}

/**
 * How far x lies from the nearest side drawn within one turn of a height, mm: 0 on the side, or on what it runs through
 * in two passes up or down.
 */
export function fromNearestSide({ shapes, passHeight, ends, pitch }: BriefPiece, x: number, y: number): number {
  const [low, high] = [y - 2 * passHeight, y + 2 * passHeight];
  let least = Number.POSITIVE_INFINITY;
  const near = (from: number, to: number) => {
    least = Math.min(least, Math.max(0, Math.min(from, to) - x, x - Math.max(from, to)));
  };
  for (const shape of shapes) {
    if (shape.kind === 'band') {
      for (const level of shape.y) if (level >= low && level <= high) near((-ends * pitch) / 2, (ends * pitch) / 2);
    } else if (shape.kind === 'circle') {
      const [cx, cy] = shape.c;
      const half = (at: number) => Math.sqrt(Math.max(0, shape.r ** 2 - (at - cy) ** 2));
      if (high < cy - shape.r || low > cy + shape.r) continue;
      const widths = [half(low), half(high), ...(low <= cy && high >= cy ? [shape.r] : [])];
      for (const side of [-1, 1]) near(cx + side * Math.min(...widths), cx + side * Math.max(...widths));
    } else {
      shape.pts.forEach(([toX, toY], at) => {
        const [fromX, fromY] = shape.pts[(at || shape.pts.length) - 1]!;
        const [from, to] = [Math.max(low, Math.min(fromY, toY)), Math.min(high, Math.max(fromY, toY))];
        if (from > to) return;
        const place = (level: number) =>
          toY === fromY ? fromX : fromX + ((level - fromY) / (toY - fromY)) * (toX - fromX);
        if (toY === fromY) near(fromX, toX);
        else near(place(from), place(to));
      });
    }
  }
  return least;
}

/** Half a cell for each end of the level sides of a shape. */
export function levelCells({ ends, pitch }: BriefPiece, shape: BriefShape): number {
  if (shape.kind === 'band') return ends;
  if (shape.kind === 'circle') return 0;
  return shape.pts.reduce((sum, [x, y], at) => {
    const [fromX, fromY] = shape.pts[(at || shape.pts.length) - 1]!;
    return sum + (fromY === y ? Math.abs(x - fromX) / pitch / 2 : 0);
  }, 0);
}
