import type { PathCommand } from '../model/piece.ts';

/**
 * A closed curve through the points: cubic pieces whose handles follow the chord between a point's neighbours, at a
 * third of the nearer chord (a Catmull–Rom curve with handles held short, so it doesn't overshoot). A corner sharper
 * than `cornerAngle` stays a corner.
 * @param ring x, y, x, y …, at least three points.
 * @param cornerAngle change of direction, radians, above which a point stays sharp.
 */
export function smoothRing(ring: Float64Array, cornerAngle: number): PathCommand[] {
  const count = ring.length / 2;
  const x = (at: number) => ring[2 * ((at + count) % count)]!;
  const y = (at: number) => ring[2 * ((at + count) % count) + 1]!;
  const handle = Array.from({ length: count }, (_, at) => {
    const inX = x(at) - x(at - 1);
    const inY = y(at) - y(at - 1);
    const outX = x(at + 1) - x(at);
    const outY = y(at + 1) - y(at);
    const turn = Math.abs(Math.atan2(inX * outY - inY * outX, inX * outX + inY * outY));
    const chord = Math.hypot(x(at + 1) - x(at - 1), y(at + 1) - y(at - 1));
    if (turn > cornerAngle || chord === 0) return { x: 0, y: 0, before: 0, after: 0 };
    return {
      x: (x(at + 1) - x(at - 1)) / chord,
      y: (y(at + 1) - y(at - 1)) / chord,
      before: Math.hypot(inX, inY) / 3,
      after: Math.hypot(outX, outY) / 3,
    };
  });
  const commands: PathCommand[] = [{ to: 'move', x: x(0), y: y(0) }];
  for (let at = 0; at < count; at++) {
    const from = handle[at]!;
    const to = handle[(at + 1) % count]!;
    commands.push({
      to: 'cubic',
      x1: x(at) + from.x * from.after,
      y1: y(at) + from.y * from.after,
      x2: x(at + 1) - to.x * to.before,
      y2: y(at + 1) - to.y * to.before,
      x: x(at + 1),
      y: y(at + 1),
    });
  }
  commands.push({ to: 'close' });
  return commands;
}
