/**
 * The runs of equal label in every row of a grid. Run `at` of row `row` starts at end `start[offset[row] + at]` and
 * reaches to the start of the next, or to the last end.
 */
export interface RowRuns {
  readonly ends: number;
  readonly rows: number;
  /** Where each row's runs begin in `start`; one longer than the rows. */
  readonly offset: Int32Array;
  readonly start: Int32Array;
  readonly label: Uint16Array;
}

/** Cuts every row of `labels` (end by end along each row) into runs. */
export function rowRuns(labels: Uint16Array, ends: number): RowRuns {
  const rows = labels.length / ends;
  let count = 0;
  for (let row = 0; row < rows; row++) {
    count++;
    const base = row * ends;
    for (let end = 1; end < ends; end++) if (labels[base + end] !== labels[base + end - 1]) count++;
  }
  const offset = new Int32Array(rows + 1);
  const start = new Int32Array(count);
  const label = new Uint16Array(count);
  let at = 0;
  for (let row = 0; row < rows; row++) {
    offset[row] = at;
    const base = row * ends;
    start[at] = 0;
    label[at++] = labels[base]!;
    for (let end = 1; end < ends; end++) {
      if (labels[base + end] === labels[base + end - 1]) continue;
      start[at] = end;
      label[at++] = labels[base + end]!;
    }
  }
  offset[rows] = at;
  return { ends, rows, offset, start, label };
}

/** One past the last end of the run at an absolute index in `row`. */
export const runStop = (runs: RowRuns, row: number, index: number): number =>
  index + 1 < runs.offset[row + 1]! ? runs.start[index + 1]! : runs.ends;
