/** A rectangle of cells that are all alike, in ends and passes; `toEnd` and `toPass` are not in it. */
export interface ChartPatch {
  readonly value: number;
  readonly fromEnd: number;
  readonly toEnd: number;
  readonly fromPass: number;
  readonly toPass: number;
}

/**
 * A chart as few rectangles: runs of like cells along a pass, carried up as long as the run stays the same.
 * @param of what the cell at (pass · ends + end) is, for example its yarn.
 */
export function chartPatches(
  chart: { readonly ends: number; readonly passes: number },
  of: (cell: number) => number,
): ChartPatch[] {
  const { ends, passes } = chart;
  const done: ChartPatch[] = [];
  let open = new Map<string, ChartPatch>();
  for (let pass = 0; pass < passes; pass++) {
    const next = new Map<string, ChartPatch>();
    for (let end = 0; end < ends; ) {
      const from = end;
      const value = of(pass * ends + end);
      while (end < ends && of(pass * ends + end) === value) end++;
      const key = `${value} ${from} ${end}`;
      const below = open.get(key);
      open.delete(key);
      next.set(
        key,
        below === undefined
          ? { value, fromEnd: from, toEnd: end, fromPass: pass, toPass: pass + 1 }
          : { ...below, toPass: pass + 1 },
      );
    }
    for (const patch of open.values()) done.push(patch);
    open = next;
  }
  return [...done, ...open.values()];
}
