import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { compareReading } from '../../src/core/compare/compareReading.ts';
import type { LoomReading } from '../../src/core/model/check.ts';
import { measurement } from '../../src/core/model/measurement.ts';
import type { Piece } from '../../src/core/model/piece.ts';
import { parseBrief, pieceFromBrief } from '../../src/core/project/brief.ts';
import { plannedSelvedges } from '../../src/core/warp/plannedSelvedges.ts';

const brief = parseBrief(
  JSON.parse(readFileSync(join(import.meta.dirname, '../fixtures/photos/dev02.brief.json'), 'utf8')),
);
if (!brief.ok) throw new Error('fixture');
const piece: Piece = pieceFromBrief(brief.value, '2026-01-01T00:00:00Z');

interface Shape {
  readonly left?: (y: number) => number;
  readonly right?: (y: number) => number;
  readonly sigma?: number;
  readonly fell?: (end: number) => number;
  readonly x?: (end: number) => number;
  readonly bow?: (end: number) => number;
  readonly bowSigma?: number;
  readonly runsTo?: (end: number) => number;
  readonly pass?: number;
  readonly counted?: number;
}

/** A reading with edges that lie so far out (positive) or in by height, and a fell by end. */
function reading(shape: Shape): LoomReading {
  const edges = plannedSelvedges(piece);
  const sigma = shape.sigma ?? 0.2;
  const { ends } = piece.warp;
  const fell = shape.fell ?? (() => 80);
  return {
    status: 'measured',
    reasons: [],
    reference: null,
    endsCounted: shape.counted ?? ends,
    ends: Array.from({ length: ends }, (_, index) => {
      const x = (index - (ends - 1) / 2) * piece.loom.notchPitch + (shape.x?.(index) ?? 0);
      return {
        index,
        seen: true,
        why: null,
        notchX: measurement(x, 0.1, 1, 'test'),
        fell: measurement(fell(index), 0.2, 1, 'test'),
        xAtFell: measurement(x, 0.1, 1, 'test'),
        bow: shape.bow ? measurement(shape.bow(index), shape.bowSigma ?? 0.1, 60, 'test') : null,
        runsTo: shape.runsTo?.(index) ?? index,
      };
    }),
    selvedge: Array.from({ length: 39 }, (_, k) => {
      const y = 1 + 2 * k;
      return {
        y,
        left: measurement(edges.left - (shape.left?.(y) ?? 0), sigma, 1, 'test'),
        right: measurement(edges.right + (shape.right?.(y) ?? 0), sigma, 1, 'test'),
      };
    }),
    ribs: [],
    pass: shape.pass === undefined ? null : measurement(shape.pass, 0.004, 40, 'test'),
    beat: [],
    colours: null,
    flags: [],
    timingMs: {},
  };
}
const flagsOf = (shape: Shape, finished = false) =>
  compareReading(reading(shape), piece, { halvesFinished: finished }).flags;
const kinds = (shape: Shape, finished = false) => flagsOf(shape, finished).map((flag) => `${flag.kind} ${flag.side}`);
const leaning = (most: number) => (y: number) => (most * y) / 77;

describe('flags', () => {
  it('says nothing where all is within a millimetre', () => {
    expect(kinds({ left: leaning(-1), right: leaning(1) })).toEqual([]);
  });

  it('flags an edge drawing in by more than the allowance, with its cause', () => {
    const [flag] = flagsOf({ right: leaning(-3.4) });
    expect(flag).toMatchObject({ kind: 'draw-in', side: 'right' });
    expect(flag!.deviationMm).toBeLessThan(-2.8);
    expect(flag!.message.mm).toMatch(/^Right edge drawing in since \d+ mm up\. 3(\.\d)? mm in, give or take 0\.\d\.$/);
    expect(flag!.advice).toContain('slacker at the right');
  });

  it('tells both edges pulled from one', () => {
    const flags = flagsOf({ left: leaning(-3.5), right: leaning(-3.5) });
    expect(flags.map((flag) => flag.side).sort()).toEqual(['left', 'right']);
    expect(flags[0]!.advice).toContain('steeper slant');
  });

  it('flags spreading', () => {
    expect(kinds({ left: leaning(4) })).toEqual(['spreading left']);
  });

  it('keeps quiet where the photograph can’t tell', () => {
    expect(kinds({ right: leaning(-3), sigma: 1.8 })).toEqual([]);
  });

  it('does not blame a piece that began narrow', () => {
    const comparison = compareReading(reading({ right: () => -3 }), piece);
    expect(comparison.flags).toEqual([]);
    expect(comparison.edges[1]!.baseMm).toBeLessThan(-1.2);
  });

  it('ignores one odd reading', () => {
    expect(kinds({ left: (y) => (y === 41 ? -9 : 0) })).toEqual([]);
  });

  it('flags a leaning fell but not a shaped one', () => {
    expect(kinds({ fell: (end) => 80 - 0.1 * end })).toEqual(['tilt right']);
    expect(kinds({ fell: (end) => 80 - 3 * Math.min(end, 30 - end) })).toEqual([]);
  });

  it('calls halves uneven only when they are said to be finished, and always shows the difference', () => {
    const shape: Shape = { fell: (end) => (end > 15 ? 84.24 : 80) };
    expect(kinds(shape)).not.toContain('uneven left');
    const comparison = compareReading(reading({ ...shape, pass: 1.06 }), piece, { halvesFinished: true });
    const uneven = comparison.flags.find((flag) => flag.kind === 'uneven');
    expect(uneven).toMatchObject({ side: 'left', message: { mm: 'The right half is 2 turns ahead.' } });
    expect(comparison.mirrored.pairs[0]).toMatchObject({ turns: -2 });
    expect(comparison.mirrored.pairs[0]!.differenceMm).toBeCloseTo(-4.24, 6);
  });

  it('flags a beat that lands the top elsewhere', () => {
    const [flag] = flagsOf({ pass: 1.14 });
    expect(flag!.kind).toBe('beat');
    expect(flag!.deviationMm).toBeCloseTo((0.08 * 200) / 1.06, 1);
    expect(flag!.message.mm).toContain('a pass is 1.14 mm, not 1.06 mm');
    expect(kinds({ pass: 1.065 })).toEqual([]);
  });

  it('says which ends are counted short', () => {
    const [flag] = flagsOf({ counted: 30 });
    expect(flag).toMatchObject({ kind: 'count' });
    expect(flag!.message.mm).toContain('31 ends planned, 30 seen.');
  });

  it('finds ends pushed apart inside', () => {
    const shape: Shape = { x: (end) => (end <= 14 ? -1.3 : 1.3) };
    expect(kinds(shape)).toContain('spreading null');
  });

  it('writes no minus sign and no blame', () => {
    const all = [
      ...flagsOf({ left: leaning(-4), right: leaning(4), pass: 1.2, counted: 29, fell: (end) => 80 + 0.2 * end }, true),
    ];
    expect(all.length).toBeGreaterThan(3);
    for (const flag of all)
      expect(`${flag.message.mm} ${flag.message.in} ${flag.advice}`).not.toMatch(/[-−]\d|!|error|invalid|wrong/i);
  });
});

describe('forecast', () => {
  it('is a range that holds where the trend leads', () => {
    const { forecasts } = compareReading(reading({ right: leaning(-3) }), piece);
    const right = forecasts.find((forecast) => forecast.side === 'right')!;
    const expected = (-3 * (200 - 5)) / 77;
    expect(right.from).toBeLessThan(expected + 0.5);
    expect(right.to).toBeGreaterThan(expected - 0.5);
    expect(right.sentence?.mm).toMatch(/^At this rate the right edge is \d+ to \d+ mm in at the top\.$/);
  });

  it('says nothing of an edge on plan', () => {
    const { forecasts } = compareReading(reading({}), piece);
    expect(forecasts.every((forecast) => forecast.sentence === null)).toBe(true);
  });
});
