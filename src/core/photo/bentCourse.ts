import type { TrackLine } from './trackLine.ts';

/**
 * A course that leaves its straight line where the string goes into the cloth: from there down it runs with the cloth, to
 * where it was wound on at the base.
 * @param fromY loom y down to which the string is bare. @param baseY loom y of the base. @param atBase loom x there.
 */
export function bentCourse(course: TrackLine, fromY: number, baseY: number, atBase: number): TrackLine {
  const fromX = course.x(fromY);
  const x = (y: number): number => {
    if (y >= fromY) return course.x(y);
    return atBase + (fromX - atBase) * Math.max(0, (y - baseY) / Math.max(1, fromY - baseY));
  };
  return { x, sigma: course.sigma };
}
