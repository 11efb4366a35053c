import type { PathCommand } from '../model/piece.ts';
import type { Subpath } from './flattenCommands.ts';

/** Corners of the round put on every joint. */
const roundCorners = 12;

/**
 * The area a line of some width covers: a strip for each straight stretch and a round at each joint, all turning the
 * same way, so filled nonzero they make one area. Ends are square cut.
 * @returns the commands, or null when they would need more than `mostPoints` points.
 */
export function lineOutline(subpaths: readonly Subpath[], width: number, mostPoints: number): PathCommand[] | null {
  const half = width / 2;
  const commands: PathCommand[] = [];
  const ring = (corners: readonly (readonly [number, number])[]) => {
    for (const [at, [x, y]] of corners.entries()) commands.push({ to: at === 0 ? 'move' : 'line', x, y });
    commands.push({ to: 'close' });
  };
  for (const { points, closed } of subpaths) {
    const count = points.length / 2;
    const stretches = closed ? count : count - 1;
    for (let at = 0; at < stretches; at++) {
      if (commands.length > mostPoints) return null;
      const next = (at + 1) % count;
      const [x0, y0, x1, y1] = [points[2 * at]!, points[2 * at + 1]!, points[2 * next]!, points[2 * next + 1]!];
      const length = Math.hypot(x1 - x0, y1 - y0);
      if (length === 0) continue;
      const nx = (-(y1 - y0) / length) * half;
      const ny = ((x1 - x0) / length) * half;
      ring([
        [x0 - nx, y0 - ny],
        [x1 - nx, y1 - ny],
        [x1 + nx, y1 + ny],
        [x0 + nx, y0 + ny],
      ]);
      if (closed || at > 0) {
        ring(
          Array.from({ length: roundCorners }, (_, corner) => {
            const angle = (2 * Math.PI * corner) / roundCorners;
            return [x0 + half * Math.cos(angle), y0 + half * Math.sin(angle)] as const;
          }),
        );
      }
    }
  }
  return commands;
}
