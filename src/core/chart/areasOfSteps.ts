/**
 * The area of every stepped cell: what was drawn there where the yarn is the same, else the nearest cell's in the same
 * run, else (a whole run moved by a pass) the one just above or below.
 */
export function areasOfSteps(
  labels: Uint16Array,
  drawn: Uint16Array,
  drawnLabels: Uint16Array,
  ends: number,
): Uint16Array {
  const areas = new Uint16Array(drawn.length);
  const passes = drawn.length / ends;
  for (let pass = 0; pass < passes; pass++) {
    for (let start = 0; start < ends; ) {
      const base = pass * ends;
      const label = labels[base + start]!;
      let stop = start + 1;
      while (stop < ends && labels[base + stop] === label) stop++;
      let known = -1;
      for (let end = start; end < stop; end++) {
        if (drawnLabels[base + end] === label) {
          areas[base + end] = drawn[base + end]!;
          if (known === -1) areas.fill(areas[base + end]!, base + start, base + end);
          known = areas[base + end]!;
        } else if (known !== -1) areas[base + end] = known;
      }
      if (known === -1) {
        for (let away = 1; known === -1 && away < passes; away++) {
          for (const row of [pass - away, pass + away]) {
            for (let end = start; end < stop && known === -1 && row >= 0 && row < passes; end++) {
              if (drawnLabels[row * ends + end] === label) known = drawn[row * ends + end]!;
            }
          }
        }
        areas.fill(Math.max(0, known), base + start, base + stop);
      }
      start = stop;
    }
  }
  return areas;
}
