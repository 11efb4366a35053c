import type { Chart } from '../model/plan.ts';

/** Where to write an area's letter so that it stands well inside: middle of a cell, in ends and passes. */
export interface AreaLabel {
  /** What `of` says of the cells here. */
  readonly value: number;
  readonly end: number;
  readonly pass: number;
  /** mm from there to the nearest edge of the area. */
  readonly room: number;
}

/** Part of a chart, in whole cells; `toEnd` and `toPass` are not in it. */
export interface ChartWindow {
  readonly fromEnd: number;
  readonly toEnd: number;
  readonly fromPass: number;
  readonly toPass: number;
}

/**
 * A place for a letter in every connected area of a chart, or of the part of it a page shows: the cell furthest from
 * the area's edge. Distances are gathered by two sweeps of a chamfer (Borgefors, Computer Vision, Graphics and Image
 * Processing 34 (1986) 344–371, with the plain two-neighbour weights), in mm, since a cell is not square.
 * @param of for example the yarn of the cell at (pass · ends + end).
 */
export function areaLabels(
  chart: Pick<Chart, 'ends' | 'passes' | 'pitch' | 'passHeight'>,
  of: (cell: number) => number,
  shown: ChartWindow = { fromEnd: 0, toEnd: chart.ends, fromPass: 0, toPass: chart.passes },
): AreaLabel[] {
  const { pitch, passHeight } = chart;
  const ends = Math.max(0, shown.toEnd - shown.fromEnd);
  const passes = Math.max(0, shown.toPass - shown.fromPass);
  const shownValue = (cell: number) => {
    const end = cell % ends;
    return of(((cell - end) / ends + shown.fromPass) * chart.ends + end + shown.fromEnd);
  };
  const values = Float64Array.from({ length: ends * passes }, (_, cell) => shownValue(cell));
  const distance = new Float64Array(ends * passes);
  const reach = (cell: number, other: number, step: number, inside: boolean) => {
    const through = inside && values[other] === values[cell] ? distance[other]! + step : step / 2;
    if (through < distance[cell]!) distance[cell] = through;
  };
  distance.fill(Number.POSITIVE_INFINITY);
  for (const forward of [true, false]) {
    const side = forward ? -1 : 1;
    for (let step = 0; step < ends * passes; step++) {
      const cell = forward ? step : ends * passes - 1 - step;
      const end = cell % ends;
      const pass = (cell - end) / ends;
      reach(cell, cell + side, pitch, end + side >= 0 && end + side < ends);
      reach(cell, cell + side * ends, passHeight, pass + side >= 0 && pass + side < passes);
    }
  }
  const seen = new Uint8Array(ends * passes);
  const labels: AreaLabel[] = [];
  for (let start = 0; start < seen.length; start++) {
    if (seen[start] === 1) continue;
    seen[start] = 1;
    const waiting = [start];
    let best = start;
    for (let cell = waiting.pop(); cell !== undefined; cell = waiting.pop()) {
      if (distance[cell]! > distance[best]! + 1e-9) best = cell;
      const end = cell % ends;
      for (const next of [end > 0 ? cell - 1 : -1, end < ends - 1 ? cell + 1 : -1, cell - ends, cell + ends]) {
        if (next < 0 || next >= seen.length || seen[next] === 1 || values[next] !== values[start]) continue;
        seen[next] = 1;
        waiting.push(next);
      }
    }
    labels.push({
      value: values[start]!,
      end: (best % ends) + shown.fromEnd,
      pass: Math.floor(best / ends) + shown.fromPass,
      room: distance[best]!,
    });
  }
  return labels;
}
