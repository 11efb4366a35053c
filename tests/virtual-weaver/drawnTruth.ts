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

/** Area of every shape as far as it shows, in cells, from 6 × 6 points to a cell; rows of the header left out. */
export function shownCells({ shapes, ends, pitch, passes, passHeight, header }: BriefPiece): number[] {
  const fine = 6;
  const seen = shapes.map(() => 0);
  for (let row = header * fine; row < passes * fine; row += 1) {
    const y = ((row + 0.5) * passHeight) / fine;
    for (let column = 0; column < ends * fine; column += 1) {
      const x = ((column + 0.5) / fine - ends / 2) * pitch;
      const top = shapes.findIndex((shape) => holds(shape, x, y));
      if (top >= 0) seen[top]! += 1 / fine ** 2;
    }
  }
  return seen;
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

/** Half a cell for each end of the level sides of a shape: a level side lies on a whole pass, wherever it is drawn. */
export function levelCells({ ends, pitch }: BriefPiece, shape: BriefShape): number {
  if (shape.kind === 'band') return ends;
  if (shape.kind === 'circle') return 0;
  return shape.pts.reduce((sum, [x, y], at) => {
    const [fromX, fromY] = shape.pts[(at || shape.pts.length) - 1]!;
    return sum + (fromY === y ? Math.abs(x - fromX) / pitch / 2 : 0);
  }, 0);
}
