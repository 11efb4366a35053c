import type { PathCommand } from '../model/piece.ts';

/** More pieces than this for one curve would be finer than 0.02 mm on a curve kilometres long. */
const mostPieces = 4096;

/**
 * Adds the points of a cubic curve after its start. The chord strays by at most h²/8 · max |B″| with h one step of
 * the parameter, and |B″| ≤ 6 · the larger second difference of the control points (standard calculus bound).
 */
function addCubic(
  into: number[],
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  x3: number,
  y3: number,
  tolerance: number,
): void {
  const bend = Math.max(Math.hypot(x0 - 2 * x1 + x2, y0 - 2 * y1 + y2), Math.hypot(x1 - 2 * x2 + x3, y1 - 2 * y2 + y3));
  const pieces = Math.min(mostPieces, Math.max(1, Math.ceil(Math.sqrt((0.75 * bend) / tolerance))));
  for (let piece = 1; piece < pieces; piece++) {
    const t = piece / pieces;
    const s = 1 - t;
    const a = s * s * s;
    const b = 3 * s * s * t;
    const c = 3 * s * t * t;
    const d = t * t * t;
    into.push(a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3);
  }
  into.push(x3, y3);
}

/** One stroke of the pen, x, y, x, y …; `closed` when the path says so. */
export interface Subpath {
  readonly points: readonly number[];
  readonly closed: boolean;
}

/**
 * The strokes of a path as points.
 * @param tolerance largest distance from curve to chord, in the path's own unit.
 */
export function flattenSubpaths(commands: readonly PathCommand[], tolerance: number): Subpath[] {
  const subpaths: Subpath[] = [];
  let points: number[] = [];
  let startX = 0;
  let startY = 0;
  let x = 0;
  let y = 0;
  const finish = (closed: boolean) => {
    if (points.length > 0) subpaths.push({ points, closed });
    points = [];
  };
  for (const command of commands) {
    if (command.to === 'close') {
      finish(true);
      x = startX;
      y = startY;
      continue;
    }
    if (command.to === 'move') {
      finish(false);
      startX = command.x;
      startY = command.y;
      points.push(command.x, command.y);
    } else {
      // After a close, drawing goes on from where that subpath began.
      if (points.length === 0) points.push(x, y);
      if (command.to === 'line') points.push(command.x, command.y);
      else addCubic(points, x, y, command.x1, command.y1, command.x2, command.y2, command.x, command.y, tolerance);
    }
    x = command.x;
    y = command.y;
  }
  finish(false);
  return subpaths;
}

/**
 * Closed rings of points from path commands. Open subpaths are closed by a straight line, as filling does; a ring of
 * fewer than three points encloses nothing and is left out.
 * @param tolerance largest distance from curve to chord, in the path's own unit.
 * @returns rings x, y, x, y …, the first point not repeated at the end.
 */
export function flattenCommands(commands: readonly PathCommand[], tolerance: number): Float64Array[] {
  const rings: Float64Array[] = [];
  for (const { points } of flattenSubpaths(commands, tolerance)) {
    let length = points.length;
    while (length >= 4 && points[length - 2] === points[0] && points[length - 1] === points[1]) length -= 2;
    if (length >= 6) rings.push(Float64Array.from(points.slice(0, length)));
  }
  return rings;
}
