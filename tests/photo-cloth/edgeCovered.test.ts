import { describe, expect, it } from 'vitest';
import type { EndReading, SelvedgeRow } from '../../src/core/model/check.ts';
import { measurement } from '../../src/core/model/measurement.ts';
import type { Mm } from '../../src/core/model/units.ts';
import { NO_STRING } from '../../src/core/photo/countEnds.ts';
import { outerEnds, withoutCovered } from '../../src/core/photo/edgeCovered.ts';
import { usualSwing } from '../../src/core/photo/floatSwing.ts';
import type { WeaveLine } from '../../src/core/photo/weaveLines.ts';
import { beat, floats, wovenLine } from '../support/wovenLine.ts';

/** Floats, but for a stretch over which something plain lies. */
const line = (end: number, plain: readonly [number, number] | null): WeaveLine =>
  wovenLine(end, 70, (y) => (plain && y > plain[0] && y < plain[1] ? 0 : floats(end, y)), 120, 0.8);

const usual = usualSwing(
  Array.from({ length: 20 }, (_, end) => line(end, null)),
  beat,
);
const at = (x: number) => measurement(x as Mm, 0.2, 1, 'test');
const rows = Array.from({ length: 60 }, (_, y): SelvedgeRow => ({ y, left: at(-50), right: at(50) }));
const gone = (outer: Parameters<typeof withoutCovered>[1], side: 'left' | 'right'): number[] =>
  withoutCovered(rows, outer, beat, usual)
    .filter((row) => row[side] === null)
    .map((row) => row.y);

describe('selvedges beside which something lies over the cloth', () => {
  const plain = { left: [line(0, null), line(1, null)], right: [line(19, null), line(18, null)] };
  const ruler = [20, 40] as const;

  it('are taken back, on that side and at those heights alone', () => {
    const outer = { ...plain, right: [line(19, ruler), line(18, ruler)] };
    const heights = gone(outer, 'right');
    expect(Math.min(...heights)).toBeGreaterThan(ruler[0]);
    expect(Math.max(...heights)).toBeLessThan(ruler[1]);
    expect(heights.length).toBeGreaterThan(10);
    expect(gone(outer, 'left')).toEqual([]);
  });

  it('stay where the outermost end alone shows no floats, and where all do', () => {
    expect(gone({ ...plain, right: [line(19, ruler), line(18, null)] }, 'right')).toEqual([]);
    expect(gone(plain, 'right')).toEqual([]);
  });

  it('begin at the outermost ends that hold a string', () => {
    const end = (index: number, why: string | null) => ({ index, why }) as EndReading;
    const ends = [end(0, NO_STRING), end(1, null), end(2, 'hidden above the cloth'), end(3, null), end(4, null)];
    expect(outerEnds(ends)).toEqual({ left: [1, 2], right: [4, 3] });
  });
});
