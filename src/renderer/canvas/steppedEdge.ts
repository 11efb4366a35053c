import type { Chart } from '../../core/model/plan.ts';

/**
 * Straight stretches of the edge between a shape's cells and those of the shapes and ground under it.
 * @param area 1 + the shape's place, as in the chart.
 * @returns four numbers a stretch: end and pass where it begins, and where it stops.
 */
export function steppedEdge(chart: Chart, area: number): Int32Array {
  const { ends, passes, areas } = chart;
  const at = (end: number, pass: number) =>
    end >= 0 && end < ends && pass >= 0 && pass < passes ? areas[pass * ends + end]! : 0;
  // Where a shape lies on top, the edge is that one's.
  const between = (one: number, other: number) =>
    one !== other && (one === area ? other === 0 || other > area : other === area && (one === 0 || one > area));
  const stretches: number[] = [];
  for (let end = 0; end <= ends; end++) {
    let from = -1;
    for (let pass = 0; pass <= passes; pass++) {
      const edge = pass < passes && between(at(end - 1, pass), at(end, pass));
      if (edge && from < 0) from = pass;
      if (!edge && from >= 0) {
        stretches.push(end, from, end, pass);
        from = -1;
      }
    }
  }
  for (let pass = 0; pass <= passes; pass++) {
    let from = -1;
    for (let end = 0; end <= ends; end++) {
      const edge = end < ends && between(at(end, pass - 1), at(end, pass));
      if (edge && from < 0) from = end;
      if (!edge && from >= 0) {
        stretches.push(from, pass, end, pass);
        from = -1;
      }
    }
  }
  return Int32Array.from(stretches);
}

/** A side of a shape standing still for so many passes. */
export interface StandingRun {
  readonly side: 'left' | 'right';
  /** Line between ends on which the side stands. */
  readonly line: number;
  readonly fromPass: number;
  readonly toPass: number;
}

/** How long each outer side of a shape stands before it steps, rising. */
export function standingRuns(chart: Chart, area: number): StandingRun[] {
  const { ends, passes, areas } = chart;
  const runs: StandingRun[] = [];
  const open: { left: StandingRun | null; right: StandingRun | null } = { left: null, right: null };
  const put = (side: 'left' | 'right', line: number, pass: number) => {
    const now = open[side];
    if (now !== null && now.line === line) {
      open[side] = { ...now, toPass: pass + 1 };
      return;
    }
    if (now !== null) runs.push(now);
    open[side] = line < 0 ? null : { side, line, fromPass: pass, toPass: pass + 1 };
  };
  for (let pass = 0; pass <= passes; pass++) {
    let left = -1;
    let right = -1;
    for (let end = 0; pass < passes && end < ends; end++) {
      if (areas[pass * ends + end] !== area) continue;
      if (left < 0) left = end;
      right = end + 1;
    }
    put('left', left, pass);
    put('right', right, pass);
  }
  return runs;
}
