/** A run of places at nearly even distances; `step` counts pitches from the first, so a gap leaves a number out. */
export interface CombChain {
  readonly places: readonly { readonly step: number; readonly x: number; readonly item: number }[];
  /** Distance from one place to the next, px, the median over the chain. */
  readonly period: number;
}

/**
 * The longest chain of places whose distances stay even: each next one lies a period further, give or take `slack`
 * of it, and the period may drift slowly, as perspective makes it. Up to `misses` places in a row may be missing.
 * @param x rising.
 */
export function longestChain(
  x: readonly number[],
  least: number,
  most: number,
  options: { readonly slack: number; readonly misses: number },
): CombChain | null {
  let best: { places: { step: number; x: number; item: number }[]; score: number } | null = null;
  const used = new Set<string>();
  for (let a = 0; a < x.length; a++) {
    for (let b = a + 1; b < x.length; b++) {
      const gap = x[b]! - x[a]!;
      if (gap > most) break;
      if (gap < least || used.has(`${a},${b}`)) continue;
      const right = extendChain(x, b, gap, 1, least, most, options, used);
      const left = extendChain(x, a, gap, -1, least, most, options, used);
      const places = [
        ...left.reverse(),
        { step: 0, x: x[a]!, item: a },
        { step: 1, x: x[b]!, item: b },
        ...right.map((place) => ({ ...place, step: place.step + 1 })),
      ];
      const span = places[places.length - 1]!.step - places[0]!.step + 1;
      const score = places.length - 0.5 * (span - places.length);
      if (!best || score > best.score) best = { places, score };
    }
  }
  if (!best || best.places.length < 3) return null;
  const first = best.places[0]!.step;
  const gaps: number[] = [];
  for (let k = 1; k < best.places.length; k++) {
    const before = best.places[k - 1]!;
    const here = best.places[k]!;
    gaps.push((here.x - before.x) / (here.step - before.step));
  }
  gaps.sort((p, q) => p - q);
  return {
    places: best.places.map((place) => ({ ...place, step: place.step - first })),
    period: gaps[gaps.length >> 1]!,
  };
}

function extendChain(
  x: readonly number[],
  start: number,
  gap: number,
  direction: 1 | -1,
  least: number,
  most: number,
  options: { readonly slack: number; readonly misses: number },
  used: Set<string>,
): { step: number; x: number; item: number }[] {
  const found: { step: number; x: number; item: number }[] = [];
  let period = gap;
  let at = start;
  let step = 0;
  for (;;) {
    let next = -1;
    let skipped = 0;
    for (; skipped <= options.misses; skipped++) {
      const expected = x[at]! + direction * period * (skipped + 1);
      const reach = options.slack * period;
      let k = at + direction;
      while (k >= 0 && k < x.length && direction * (x[k]! - expected) <= reach) {
        const off = Math.abs(x[k]! - expected);
        if (off <= reach && (next < 0 || off < Math.abs(x[next]! - expected))) next = k;
        k += direction;
      }
      if (next >= 0) break;
    }
    if (next < 0) return found;
    const measured = Math.abs(x[next]! - x[at]!) / (skipped + 1);
    if (skipped === 0) used.add(direction > 0 ? `${at},${next}` : `${next},${at}`);
    period = Math.min(most, Math.max(least, 0.7 * period + 0.3 * measured));
    step += skipped + 1;
    found.push({ step: direction * step, x: x[next]!, item: next });
    at = next;
  }
}
