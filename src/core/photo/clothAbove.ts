import type { EndReading } from '../model/check.ts';
import type { Beat } from './beat.ts';
import { FLOATS_SEEN, floatSwing } from './floatSwing.ts';
import { median } from './statistics.ts';
import type { WeaveLine } from './weaveLines.ts';

/** Passes above the fell that are looked at. */
export const LOOKED_ABOVE = FLOATS_SEEN + 1;
/** The edge of the topmost float is left out, passes. */
const EDGE = 0.5;
/** Swings of this size, as a share of what the cloth below shows, may be floats; larger ones are marks or shade. */
const LEAST = 0.5;
const MOST = 1.3;
/** They must be so many times as large as what is seen above the fell on other ends. */
const STANDS_OUT = 4;
/** And keep step with the cloth, in two looks. */
const IN_STEP = 0.9;
const STILL_IN_STEP = 0.85;

/**
 * Doubts a fell above which the floats go on, in step with the cloth: an edge inside the cloth was taken for its top.
 * @param lines from the base to `LOOKED_ABOVE` passes above the fells.
 */
export function doubtClothAbove(ends: readonly EndReading[], lines: readonly WeaveLine[], beat: Beat): EndReading[] {
  const pass = beat.pass.value;
  const looks = lines.flatMap((line) => {
    const fell = ends.find((end) => end.index === line.end)?.fell?.value;
    if (fell === undefined) return [];
    const below = floatSwing(line, fell - EDGE * pass, beat);
    const above = floatSwing(line, fell + (EDGE + FLOATS_SEEN) * pass, beat);
    const farther = floatSwing(line, fell + (2 * EDGE + FLOATS_SEEN) * pass, beat);
    return below && above && farther ? [{ end: line.end, below, above, farther }] : [];
  });
  const usual = median(looks.map((look) => look.below.size));
  const noise = median(looks.map((look) => look.above.size));
  const goesOn = new Set(
    looks
      .filter(
        ({ above, farther }) =>
          above.size > Math.max(LEAST * usual, STANDS_OUT * noise) &&
          above.size < MOST * usual &&
          above.inStep > IN_STEP &&
          farther.inStep > STILL_IN_STEP,
      )
      .map((look) => look.end),
  );
  return ends.map((end) =>
    goesOn.has(end.index)
      ? { ...end, seen: false, why: 'floats go on above the edge that was found', fell: null, xAtFell: null }
      : end,
  );
}
