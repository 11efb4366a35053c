import type { PathCommand } from '../model/piece.ts';
import type { Box } from './box.ts';

/** Parameters strictly inside (0, 1) at which one coordinate of a cubic turns back: roots of its derivative. */
function turningParameters(p0: number, p1: number, p2: number, p3: number): number[] {
  const a = p3 - 3 * p2 + 3 * p1 - p0;
  const b = 2 * (p2 - 2 * p1 + p0);
  const c = p1 - p0;
  const within = (t: number) => t > 0 && t < 1;
  if (Math.abs(a) < 1e-12 * (Math.abs(b) + Math.abs(c))) return b === 0 ? [] : [-c / b].filter(within);
  const inside = b * b - 4 * a * c;
  if (inside < 0) return [];
  const root = Math.sqrt(inside);
  return [(-b + root) / (2 * a), (-b - root) / (2 * a)].filter(within);
}

const at = (t: number, p0: number, p1: number, p2: number, p3: number): number => {
  const s = 1 - t;
  return s * s * s * p0 + 3 * s * s * t * p1 + 3 * s * t * t * p2 + t * t * t * p3;
};

/** The box of the drawn curves themselves, not of their handles; null for a path without points. */
export function commandsBox(commands: readonly PathCommand[]): Box | null {
  let left = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let bottom = Number.POSITIVE_INFINITY;
  let top = Number.NEGATIVE_INFINITY;
  const takeX = (x: number) => {
    if (x < left) left = x;
    if (x > right) right = x;
  };
  const takeY = (y: number) => {
    if (y < bottom) bottom = y;
    if (y > top) top = y;
  };
  let penX = 0;
  let penY = 0;
  let startX = 0;
  let startY = 0;
  for (const command of commands) {
    if (command.to === 'close') {
      penX = startX;
      penY = startY;
      continue;
    }
    takeX(command.x);
    takeY(command.y);
    if (command.to === 'cubic') {
      const { x1, y1, x2, y2, x, y } = command;
      for (const t of turningParameters(penX, x1, x2, x)) takeX(at(t, penX, x1, x2, x));
      for (const t of turningParameters(penY, y1, y2, y)) takeY(at(t, penY, y1, y2, y));
    } else if (command.to === 'move') {
      startX = command.x;
      startY = command.y;
    }
    penX = command.x;
    penY = command.y;
  }
  return left <= right && bottom <= top ? { left, right, bottom, top } : null;
}
