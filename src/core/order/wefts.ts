import type { SteppedChart } from '../chart/makeChart.ts';

/** One trip of a weft: it travels right from `low` to `high` or left from `high` to `low`, both included. */
export interface WeftRow {
  readonly pass: number;
  readonly low: number;
  readonly high: number;
  readonly right: boolean;
}

/** What one length of weft weaves, from its first tail to its last: each row begins on the end where the last stopped. */
export interface Weft {
  readonly label: number;
  readonly rows: WeftRow[];
}

export interface Wefts {
  readonly wefts: readonly Weft[];
  /** Which weft weaves each cell, end by end along each pass. */
  readonly ofCell: Int32Array;
}

/**
 * Follows every weft through a stepped chart. A row goes on from the row under it when that was the same area, travelled
 * the other way, and stopped on the end where this one begins; otherwise a fresh weft starts. So whatever the chart,
 * what comes out can be woven.
 */
export function followWefts(stepped: SteppedChart): Wefts {
  const { ends, passes } = stepped.chart;
  const { labels, right } = stepped;
  const wefts: Weft[] = [];
  const ofCell = new Int32Array(ends * passes);
  for (let pass = 0; pass < passes; pass++) {
    const base = pass * ends;
    for (let low = 0; low < ends; ) {
      let stop = low + 1;
      while (stop < ends && labels[base + stop] === labels[base + low]) stop++;
      const high = stop - 1;
      const travelsRight = right[base + low] === 1;
      const from = travelsRight ? low : high;
      let weft = -1;
      if (pass > 0) {
        const under = ofCell[base - ends + from]!;
        const last = wefts[under]!.rows.at(-1)!;
        const stopped = last.right ? last.high : last.low;
        const same = wefts[under]!.label === labels[base + low];
        if (same && last.right !== travelsRight && stopped === from) weft = under;
      }
      if (weft === -1) weft = wefts.push({ label: labels[base + low]!, rows: [] }) - 1;
      wefts[weft]!.rows.push({ pass, low, high, right: travelsRight });
      ofCell.fill(weft, base + low, base + stop);
      low = stop;
    }
  }
  return { wefts, ofCell };
}
