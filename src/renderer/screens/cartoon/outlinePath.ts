import type { Frame } from './frame.ts';

/** Closed rings, x, y, x, y … in cloth mm, as a path of the drawing. */
export const outlinePath = (rings: readonly ArrayLike<number>[], frame: Frame): string =>
  rings
    .map((ring) => {
      const points = [];
      for (let at = 0; at < ring.length; at += 2)
        points.push(`${frame.x(ring[at]!).toFixed(1)} ${frame.y(ring[at + 1]!).toFixed(1)}`);
      return `M${points.join('L')}Z`;
    })
    .join('');
