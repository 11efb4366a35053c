import type { EdgeLine } from './edgeLines.ts';

/** The two bars in the turned picture: the inner edges of the one higher and the one lower in it. */
export interface BarPair {
  readonly upper: EdgeLine;
  readonly lower: EdgeLine;
  readonly upperOuter: EdgeLine | null;
  readonly lowerOuter: EdgeLine | null;
  /** Sum of supports, less what doesn't fit. */
  readonly score: number;
  /** Distance between the inner edges over what the comb's pitch makes of the opening's height. */
  readonly ratio: number;
}

/**
 * Picks the inner edges of both bars out of many lines across: their distance is the opening's height at the scale the
 * comb gives (foreshortening takes a few per cent), and each has the bar's other edge behind it.
 * @param scale px per mm as the comb has it at height y of the turned picture.
 */
export function findBarPair(
  lines: readonly EdgeLine[],
  scale: (y: number) => number,
  openingHeight: number,
  bar: number,
  tolerance = 0.08,
): BarPair | null {
  let best: BarPair | null = null;
  const outers = lines.map((line) => ({
    above: outerEdge(lines, line, scale, bar, -1),
    below: outerEdge(lines, line, scale, bar, 1),
  }));
  for (let i = 0; i < lines.length; i++) {
    for (let j = 0; j < lines.length; j++) {
      const upper = lines[i]!;
      const lower = lines[j]!;
      if (lower.at - upper.at < 40) continue;
      const expected = openingHeight * scale((upper.at + lower.at) / 2);
      const ratio = (lower.at - upper.at) / expected;
      if (Math.abs(ratio - 0.995) > tolerance) continue;
      const above = outers[i]!.above;
      const below = outers[j]!.below;
      // Lines far apart may differ in slope by perspective, about as much per height as the scale changes.
      const fan = Math.abs(lower.slope - upper.slope) / ((lower.at - upper.at) / 1000);
      const score =
        upper.support +
        lower.support +
        (above ? 1.2 * above.support : 0.2) +
        (below ? 1.2 * below.support : 0.2) -
        8 * Math.abs(ratio - 0.995) -
        2 * Math.max(0, fan - 0.12) -
        parallelMisfit(upper, above) -
        parallelMisfit(lower, below);
      if (!best || score > best.score) {
        best = { upper, lower, upperOuter: above, lowerOuter: below, score, ratio };
      }
    }
  }
  return best;
}

const parallelMisfit = (inner: EdgeLine, outer: EdgeLine | null): number =>
  outer ? 8 * Math.max(0, Math.abs(inner.slope - outer.slope) - 0.01) : 0;

/** The best line about one bar's height away. */
function outerEdge(
  lines: readonly EdgeLine[],
  inner: EdgeLine,
  scale: (y: number) => number,
  bar: number,
  direction: 1 | -1,
): EdgeLine | null {
  const expected = bar * scale(inner.at);
  let best: EdgeLine | null = null;
  let bestScore = 0;
  for (const line of lines) {
    const ratio = (direction * (line.at - inner.at)) / expected;
    if (Math.abs(ratio - 1) > 0.2 || Math.abs(line.slope - inner.slope) > 0.035) continue;
    const score = line.support - 2 * Math.abs(ratio - 1);
    if (score > bestScore) {
      best = line;
      bestScore = score;
    }
  }
  return best;
}
