import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeChart } from '../../src/core/chart/makeChart.ts';
import { compareReading } from '../../src/core/compare/compareReading.ts';
import type { LoomReading } from '../../src/core/model/check.ts';
import { measurement } from '../../src/core/model/measurement.ts';
import { BARE } from '../../src/core/model/plan.ts';
import { parseBrief, pieceFromBrief } from '../../src/core/project/brief.ts';

// An arch on a ground: its sides run straight up over many passes, its foot and top run across.
const brief = parseBrief(
  JSON.parse(readFileSync(join(import.meta.dirname, '../fixtures/photos/dev07.brief.json'), 'utf8')),
);
if (!brief.ok) throw new Error('fixture');
const piece = pieceFromBrief(brief.value, '2026-01-01T00:00:00Z');
const { chart } = makeChart(piece);
const PASSES = 120;

/** The cloth as charted, but with every cell taken from where `from` says. */
function reading(from: (end: number, pass: number) => readonly [number, number]): LoomReading {
  const rows = Array.from({ length: PASSES }, (_, pass) =>
    Array.from({ length: chart.ends }, (_, end) => {
      const [e, p] = from(end, pass);
      const at = Math.max(0, Math.min(chart.passes - 1, p)) * chart.ends + Math.max(0, Math.min(chart.ends - 1, e));
      const yarn = chart.cells[at]!;
      return yarn === BARE ? -1 : yarn;
    }),
  );
  const pass = piece.cloth.passHeight;
  return {
    status: 'measured',
    reasons: [],
    reference: null,
    endsCounted: chart.ends,
    ends: Array.from({ length: chart.ends }, (_, index) => ({
      index,
      seen: true,
      why: null,
      notchX: null,
      fell: measurement(PASSES * pass, 0.2, 1, 'test'),
      xAtFell: null,
      bow: null,
      runsTo: null,
    })),
    selvedge: [],
    ribs: [],
    pass: measurement(pass, 0.002, PASSES, 'test'),
    beat: [],
    colours: { rows, share: 1 },
    flags: [],
    timingMs: {},
  };
}
const compared = (from: (end: number, pass: number) => readonly [number, number]) =>
  compareReading(reading(from), piece);

describe('motif edges', () => {
  it('finds the charted edges in their places and flags none', () => {
    const { motif, flags, places } = compared((end, pass) => [end, pass]);
    expect(motif.filter((edge) => edge.way === 'across').length).toBeGreaterThan(1);
    expect(motif.filter((edge) => edge.way === 'up').length).toBeGreaterThan(0);
    expect(motif.every((edge) => edge.off === 0)).toBe(true);
    expect(flags.filter((flag) => flag.kind === 'motif')).toEqual([]);
    expect(places.map((place) => place.turns)).toEqual([PASSES / 2, PASSES / 2]);
  });

  it('says by how many ends a motif stands too far right, and what to do', () => {
    const { motif, flags } = compared((end, pass) => [end - 2, pass]);
    const long = motif.filter((edge) => edge.way === 'across' && edge.length >= 20);
    expect(long.length).toBeGreaterThan(0);
    expect(long.every((edge) => edge.off === 2)).toBe(true);
    const flag = flags.find((one) => one.kind === 'motif');
    expect(flag?.message.mm).toContain('to the right of its place');
    expect(flag?.advice).toBe('Take the next turns there 2 ends to the left.');
    // Out of the middle is positive on the right, negative on the left.
    expect(Math.sign(flag!.deviationMm)).toBe(flag!.side === 'left' ? -1 : 1);
  });

  it('says how many turns late a motif came', () => {
    const { motif, flags, places } = compared((end, pass) => [end, pass - 4]);
    const up = motif.filter((edge) => edge.way === 'up');
    expect(up.length).toBeGreaterThan(0);
    expect(up.every((edge) => edge.off === 4)).toBe(true);
    for (const place of places) if (place.laterTurns !== null) expect(place.laterTurns).toBe(2);
    // The height of a motif is the beat's and the re-plan's matter.
    expect(flags.filter((flag) => flag.kind === 'motif')).toEqual([]);
  });

  it('does not take a tail of another yarn for an edge', () => {
    const { flags } = compared((end, pass) => [end, pass]);
    const tail = compared((end, pass) =>
      pass > 60 && pass < 75 && end === Math.round(5 + pass / 10) ? [20, 60] : [end, pass],
    );
    expect(tail.flags.map((flag) => flag.kind)).toEqual(flags.map((flag) => flag.kind));
  });
});
