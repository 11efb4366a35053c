/** A stretch of a list that is its first `period` items, `times` times over. */
export interface Run {
  readonly from: number;
  readonly period: number;
  readonly times: number;
}

/** Items that repeat as a group: a longer group isn't held in the head, so it is told item by item. */
export const LONGEST_PERIOD = 8;

/**
 * Cuts a list into runs, in order and without a gap, so that least has to be read: a run is read as the items of its
 * period and, once, how often they come. Of two ways that read alike the one that begins to repeat earlier is taken, then
 * the one of a shorter period, then the one that repeats it more often.
 * @param keys two items are alike where their keys are.
 */
export function repeatedRuns(keys: readonly string[]): readonly Run[] {
  const count = keys.length;
  const numbers = new Map<string, number>();
  const items = Int32Array.from(keys, (key) => {
    const number = numbers.get(key) ?? numbers.size;
    numbers.set(key, number);
    return number;
  });
  /** For each period, how many items from here on are what stands a period later. */
  const alike = Array.from({ length: LONGEST_PERIOD + 1 }, () => new Int32Array(count + 1));
  /** What is read from here to the end, at the least, and the run that begins it. */
  const read = new Float64Array(count + 1);
  const begins: Run[] = [];
  for (let from = count - 1; from >= 0; from--) {
    let least: Run = { from, period: 1, times: 1 };
    read[from] = 2 + read[from + 1]!;
    for (let period = 1; period <= LONGEST_PERIOD && from + period <= count; period++) {
      const sameFor = alike[period]!;
      if (items[from] === items[from + period]) sameFor[from] = sameFor[from + 1]! + 1;
      const most = 1 + Math.floor(sameFor[from]! / period);
      for (let times = most; times > 1; times--) {
        const reads = period + 1 + read[from + period * times]!;
        if (reads > read[from]! || (reads === read[from] && least.times > 1)) continue;
        read[from] = reads;
        least = { from, period, times };
      }
    }
    begins[from] = least;
  }
  const runs: Run[] = [];
  for (let from = 0; from < count; ) {
    const run = begins[from]!;
    runs.push(run);
    from += run.period * run.times;
  }
  return runs;
}
