import type { EndReading, SelvedgeRow } from '../model/check.ts';
import type { Beat } from './beat.ts';
import { NO_STRING } from './countEnds.ts';
import { FLOATS_SEEN, floatSwing } from './floatSwing.ts';
import type { WeaveLine } from './weaveLines.ts';

/** Floats below this share of what the picture's cloth shows aren't floats. */
const FLAT = 0.2;
/** Ends from the edge inward that must all show none: an outermost one alone may be woven in a yarn without gloss. */
const ENDS = 2;

/** The outermost ends that hold a string, on either side, from the edge inward. */
export function outerEnds(ends: readonly EndReading[]): Readonly<Record<'left' | 'right', readonly number[]>> {
  const strung = ends.filter((end) => end.why !== NO_STRING).map((end) => end.index);
  return { left: strung.slice(0, ENDS), right: strung.slice(-ENDS).reverse() };
}

/**
 * Takes back the selvedges beside which no floats are seen: a ruler, a card or a hand that lies over the cloth's edge has
 * an edge of its own.
 * @param outer up the outer ends, to above the topmost row.
 * @param usual how much the cloth's floats swing, from `usualSwing`.
 */
export function withoutCovered(
  rows: readonly SelvedgeRow[],
  outer: Readonly<Record<'left' | 'right', readonly WeaveLine[]>>,
  beat: Beat,
  usual: number,
): SelvedgeRow[] {
  const covered = (side: 'left' | 'right', y: number): boolean => {
    // A look as high as it is, with the row in its middle; near the base it begins there.
    const to = Math.max(FLOATS_SEEN, y / beat.pass.value + FLOATS_SEEN / 2) * beat.pass.value;
    const looks = outer[side].map((line) => floatSwing(line, to, beat));
    return looks.length === ENDS && looks.every((look) => look !== null && look.size < FLAT * usual);
  };
  return rows.map((row) => ({
    ...row,
    left: row.left && covered('left', row.y) ? null : row.left,
    right: row.right && covered('right', row.y) ? null : row.right,
  }));
}
