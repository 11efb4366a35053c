import { describe, expect, it } from 'vitest';
import type { SelvedgeRow } from '../../src/core/model/check.ts';
import { measurement } from '../../src/core/model/measurement.ts';
import type { Mm } from '../../src/core/model/units.ts';
import { alongEdge, withoutBeyond } from '../../src/core/photo/edgeFloats.ts';
import { usualSwing } from '../../src/core/photo/floatSwing.ts';
import type { WeaveLine } from '../../src/core/photo/weaveLines.ts';
import { beat, floats, wovenLine } from '../support/wovenLine.ts';

/** Turns along a line, but for a stretch in which it runs beside the cloth. */
const line = (end: number, beside: readonly [number, number] = [0, 0]): WeaveLine =>
  wovenLine(end, 80, (y) => (y > beside[0] && y < beside[1] ? 0 : floats(end, y)), 120, 0.8);

const at = (x: number) => measurement(x as Mm, 0.2, 1, 'test');
const rows = Array.from({ length: 35 }, (_, k): SelvedgeRow => ({ y: 2 * k, left: at(-50), right: at(50) }));
const usual = usualSwing(
  Array.from({ length: 12 }, (_, end) => line(end)),
  beat,
);
const gone = (inside: readonly WeaveLine[]): number[] =>
  withoutBeyond(rows, 'right', inside, beat, usual)
    .filter((row) => row.right === null)
    .map((row) => row.y);

describe('selvedges read beyond the cloth', () => {
  it('are taken back where no turns are seen just inside them, on that side alone', () => {
    const stripe = [18, 62] as const;
    const heights = gone([line(11, stripe), line(11, stripe), line(11, stripe)]);
    expect(heights.length).toBeGreaterThan(15);
    expect(Math.min(...heights)).toBeGreaterThan(12);
    expect(Math.max(...heights)).toBeLessThan(68);
    const left = withoutBeyond(rows, 'right', [line(11, stripe)], beat, usual).filter((row) => row.left === null);
    expect(left).toEqual([]);
  });

  it('stay where turns show in one of the places looked at, and where a few passes alone don’t show', () => {
    expect(gone([line(11, [0, 80]), line(11), line(11, [0, 80])])).toEqual([]);
    expect(gone([line(11, [30, 36]), line(11, [30, 36]), line(11, [30, 36])])).toEqual([]);
  });

  it('are looked along straight from reading to reading, and on beyond the last ones', () => {
    const bent: SelvedgeRow[] = [
      { y: 0, left: at(-50), right: null },
      { y: 10, left: null, right: null },
      { y: 20, left: at(-48), right: at(47) },
    ];
    const course = alongEdge(bent, 'left')!;
    expect([course(-5), course(0), course(5), course(20), course(40)]).toEqual([-50, -50, -49.5, -48, -48]);
    expect(alongEdge(bent, 'right')).toBeNull();
  });
});
