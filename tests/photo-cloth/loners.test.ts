import { describe, expect, it } from 'vitest';
import { measurement } from '../../src/core/model/measurement.ts';
import type { EndFell } from '../../src/core/photo/endFell.ts';
import { doubtLoners } from '../../src/core/photo/fellNeighbours.ts';

const course = { x: () => 0, sigma: () => 0.05 };
const ends = (heights: readonly (number | null)[]): EndFell[] =>
  heights.map((height, end) => ({
    end,
    course,
    fell: height === null ? null : measurement(height, 0.2, 1, 'test'),
    why: height === null ? 'something lies over the fell here' : null,
  }));
const believed = (heights: readonly (number | null)[]) =>
  doubtLoners(ends(heights), 1).flatMap((end) => (end.fell ? [end.end] : []));

describe('ends that stand alone', () => {
  it('believes a straight fell, a slope and a step between blocks', () => {
    expect(believed([80, 81, 80, 81, 80])).toEqual([0, 1, 2, 3, 4]);
    expect(believed([40, 48, 56, 64, 72])).toEqual([0, 1, 2, 3, 4]);
    expect(believed([80, 81, 80, 41, 40, 41])).toEqual([0, 1, 2, 3, 4, 5]);
  });

  it('believes the foot of a V, but no pit in a slope', () => {
    expect(believed([70, 60, 50, 42, 50, 60, 70])).toEqual([0, 1, 2, 3, 4, 5, 6]);
    expect(believed([118, 104, 70, 82, 77, 72])).not.toContain(2);
  });

  it('does not believe an outer end far from its neighbour', () => {
    expect(believed([80, 81, 80, 81, 190])).toEqual([0, 1, 2, 3]);
    expect(believed([0, 81, 80, 81, 80])).toEqual([1, 2, 3, 4]);
  });

  it('does not believe an end that lies far off beside one on which something lies', () => {
    expect(believed([null, null, 65, 80, 81, 80])).toEqual([3, 4, 5]);
    expect(believed([null, null, 79, 80, 81, 80])).toEqual([2, 3, 4, 5]);
  });

  it('does not believe an end between hidden ones that lies far from all the others', () => {
    expect(believed([0, null, null, null, 160, 161, 160])).toEqual([4, 5, 6]);
    expect(believed([150, null, null, null, 160, 161, 160])).toEqual([0, 4, 5, 6]);
    expect(believed([null, 90, null])).toEqual([1]);
  });
});
