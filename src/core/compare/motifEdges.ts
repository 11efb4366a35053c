import type { LoomReading } from '../model/check.ts';
import type { Piece } from '../model/piece.ts';
import { BARE, type Chart } from '../model/plan.ts';
import { median } from '../photo/statistics.ts';
import type { Side } from './edgeCourse.ts';

/** A motif's edge seen in the cloth against the chart: a run of passes (beside it) or of ends (under or over it). */
export interface MotifEdge {
  /** `across`: the edge runs up and may lie left or right; `up`: it runs across and may lie low or high. */
  readonly way: 'across' | 'up';
  /** Half of the cloth it lies in; null about the middle. */
  readonly side: Side | null;
  /** Index of the yarns either side: left and right of it, or below and above. */
  readonly yarns: readonly [number, number];
  /** Middle end and pass of the run, as charted. */
  readonly end: number;
  readonly pass: number;
  /** How many passes or ends agree on it. */
  readonly length: number;
  /** Across: positive to the right, in ends. Up: positive is later, in passes. */
  readonly off: number;
  /** The same in mm: across as it is; up by the measured pass against the planned one. */
  readonly offMm: number;
  readonly sigmaMm: number;
}

/** Looked for within so many ends, and passes, of where it is charted. */
const ENDS_APART = 5;
const PASSES_APART = 14;
/** A run this long is believed: fewer cells may be misread together. */
const FEWEST_PASSES = 8;
const FEWEST_ENDS = 3;
/** Of the cells along a charted edge so many must show it alike. */
const AGREEING = 0.7;

/** One place where the charted yarn changes and the change found nearest to it in the cloth. */
interface Change {
  readonly end: number;
  readonly pass: number;
  readonly from: number;
  readonly to: number;
  /** Null where the cloth is woven but shows no such change near. */
  readonly off: number | null;
}

/**
 * Every motif edge that both chart and cloth show. Cells near the fell are left out: their floats may be covered.
 * @param chart the chart the cloth was woven from.
 */
export function motifEdges(reading: LoomReading, piece: Piece, chart: Chart): MotifEdge[] {
  const rows = reading.colours?.rows;
  if (!rows) return [];
  const planned = (end: number, pass: number): number => {
    if (end < 0 || end >= chart.ends || pass < 0 || pass >= chart.passes) return -1;
    const yarn = chart.cells[pass * chart.ends + end]!;
    return yarn === BARE ? -1 : yarn;
  };
  const seen = (end: number, pass: number): number => rows[pass]?.[end] ?? -1;
  const across: Change[] = [];
  const up: Change[] = [];
  for (let pass = 0; pass < Math.min(rows.length, chart.passes); pass++) {
    for (let end = 0; end < chart.ends; end++) {
      const here = planned(end, pass);
      if (here < 0) continue;
      const left = planned(end - 1, pass);
      if (left >= 0 && left !== here) {
        const off = nearestAcross(seen, end, pass, left, here);
        if (off !== null || (seen(end - 1, pass) >= 0 && seen(end, pass) >= 0)) {
          across.push({ end, pass, from: left, to: here, off });
        }
      }
      const below = planned(end, pass - 1);
      if (below >= 0 && below !== here) {
        const off = nearestUp(seen, end, pass, below, here);
        if (off !== null || (seen(end, pass - 1) >= 0 && seen(end, pass) >= 0)) {
          up.push({ end, pass, from: below, to: here, off });
        }
      }
    }
  }
  const measured = reading.pass?.value ?? piece.cloth.passHeight;
  const passSigma = reading.pass?.sigma ?? 0;
  const edges = (way: MotifEdge['way'], run: readonly Change[], fewest: number): MotifEdge[] => {
    const found = run.flatMap((change) => (change.off === null ? [] : [change.off]));
    const off = found.length > 0 ? median(found) : 0;
    const agreeing = found.filter((one) => Math.abs(one - off) <= 1).length;
    // A tail of another yarn makes changes too, but seldom the same ones all along an edge.
    if (agreeing < fewest || agreeing < AGREEING * run.length) return [];
    const end = median(run.map((change) => change.end));
    const pass = median(run.map((change) => change.pass));
    const middle = chart.ends / 2;
    const side = Math.abs(end - middle) < 1 ? null : end < middle ? 'left' : 'right';
    const offMm = way === 'across' ? off * chart.pitch : (pass + off) * measured - pass * chart.passHeight;
    const sigmaMm = way === 'across' ? 0.3 * chart.pitch : Math.hypot(0.6 * measured, pass * passSigma);
    return [{ way, side, yarns: [run[0]!.from, run[0]!.to], end, pass, length: agreeing, off, offMm, sigmaMm }];
  };
  const upward = runsOf(
    across,
    (a, b) => b.pass - a.pass,
    (a, b) => Math.abs(b.end - a.end) <= 3,
  );
  const sideways = runsOf(
    up,
    (a, b) => b.end - a.end,
    (a, b) => Math.abs(b.pass - a.pass) <= 4,
  );
  return [
    ...upward.flatMap((run) => edges('across', run, FEWEST_PASSES)),
    ...sideways.flatMap((run) => edges('up', run, FEWEST_ENDS)),
  ];
}

/** A slanting edge one turn higher or lower is no edge too far across: rows two passes off are asked as well. */
function nearestAcross(
  seen: (end: number, pass: number) => number,
  end: number,
  pass: number,
  from: number,
  to: number,
): number | null {
  for (let apart = 0; apart <= ENDS_APART; apart++) {
    for (const off of apart === 0 ? [0] : [-apart, apart]) {
      for (const row of [pass, pass - 2, pass + 2]) {
        if (seen(end + off - 1, row) === from && seen(end + off, row) === to) return off;
      }
    }
  }
  return null;
}

function nearestUp(
  seen: (end: number, pass: number) => number,
  end: number,
  pass: number,
  from: number,
  to: number,
): number | null {
  for (let apart = 0; apart <= PASSES_APART; apart++) {
    for (const off of apart === 0 ? [0] : [-apart, apart]) {
      if (seen(end, pass + off - 1) === from && seen(end, pass + off) === to) return off;
    }
  }
  return null;
}

/** Changes between the same two yarns that follow one another without a gap of more than two. */
function runsOf(
  changes: readonly Change[],
  ahead: (a: Change, b: Change) => number,
  beside: (a: Change, b: Change) => boolean,
): Change[][] {
  const runs: Change[][] = [];
  const ordered = [...changes].sort((a, b) => ahead(b, a));
  for (const change of ordered) {
    const run = runs.find((one) => {
      const last = one[one.length - 1]!;
      const step = ahead(last, change);
      return step > 0 && step <= 2 && last.from === change.from && last.to === change.to && beside(last, change);
    });
    if (run) run.push(change);
    else runs.push([change]);
  }
  return runs;
}
