import type { Course } from './scene.ts';

/** Value of a course at a place: straight between its points, level beyond its ends. */
export function along(course: Course, at: number): number {
  const first = course[0]!;
  if (at <= first[0]) return first[1];
  for (let k = 1; k < course.length; k++) {
    const [x1, y1] = course[k]!;
    if (at <= x1) {
      const [x0, y0] = course[k - 1]!;
      return y0 + ((y1 - y0) * (at - x0)) / Math.max(1e-9, x1 - x0);
    }
  }
  return course[course.length - 1]![1];
}
