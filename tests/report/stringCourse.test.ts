import { describe, expect, it } from 'vitest';
import type { EndReading } from '../../src/core/model/check.ts';
import { measurement } from '../../src/core/model/measurement.ts';
import { stringCourse } from '../../src/core/report/stringCourse.ts';

const at = (value: number) => measurement(value, 0.1, 10, 'string');
const end = (index: number, more: Partial<EndReading> = {}): EndReading => ({
  index,
  seen: true,
  why: null,
  notchX: at(10 * index),
  fell: at(100),
  xAtFell: at(10 * index),
  bow: null,
  runsTo: index,
  ...more,
});

describe('the course of a bare string', () => {
  it('is straight from the fell to its own notch where it doesn’t bow', () => {
    const course = stringCourse(end(2), [end(2)], 300);
    expect(course[0]).toEqual({ x: 20, y: 100 });
    expect(course.at(-1)).toEqual({ x: 20, y: 300 });
    expect(course.every(({ x }) => x === 20)).toBe(true);
  });

  it('lies the bow aside half-way, and nowhere further', () => {
    const slack = end(2, { bow: at(-2.4) });
    const course = stringCourse(slack, [slack], 300);
    expect(course.find(({ y }) => y === 200)?.x).toBeCloseTo(20 - 2.4, 9);
    expect(Math.min(...course.map(({ x }) => x))).toBeCloseTo(20 - 2.4, 9);
  });

  it('ends in the notch it hangs in, though that is another’s', () => {
    const astray = end(2, { runsTo: 3, notchX: null });
    expect(stringCourse(astray, [astray, end(3)], 300).at(-1)).toEqual({ x: 30, y: 300 });
  });

  it('is empty where the fell, the string or its notch was not seen', () => {
    for (const lacking of [{ fell: null }, { xAtFell: null }, { notchX: null }] as const) {
      expect(stringCourse(end(2, lacking), [end(2, lacking)], 300)).toEqual([]);
    }
  });
});
