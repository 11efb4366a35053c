import type { Beat } from './beat.ts';
import { FLOATS_SEEN, floatSwing } from './floatSwing.ts';
import type { WeaveLine } from './weaveLines.ts';

/** Passes above the base up to which two looks reach: the second lies clear of a header in a yarn without gloss. */
const LOOKS = [FLOATS_SEEN + 2, 2 * FLOATS_SEEN + 4] as const;
/** Floats below this share of what the cloth shows farther up, or so far out of step, aren't floats. */
const FLAT = 0.3;
const OUT_OF_STEP = 0.3;
/** On so many of the ends no floats are seen at the foot, and on so few as this nothing is said. */
const MOSTLY = 0.7;
const FEWEST = 6;

/**
 * Whether what was taken for cloth shows no floats where cloth begins, though it does farther up: then it was seen in
 * the wrong place, most likely with the loom the other way up.
 * @param usual how much the cloth's floats swing, from `usualSwing`.
 */
export function bareFoot(lines: readonly WeaveLine[], beat: Beat, usual: number): boolean {
  const told = lines.flatMap((line) => {
    const looks = LOOKS.map((passes) => floatSwing(line, passes * beat.pass.value, beat));
    const high = line.rows * line.yStep > (LOOKS[1] + FLOATS_SEEN) * beat.pass.value;
    if (!high || looks.some((look) => look === null)) return [];
    return [looks.every((look) => look!.size < FLAT * usual || look!.inStep < OUT_OF_STEP)];
  });
  return told.length >= FEWEST && told.filter((bare) => bare).length > MOSTLY * told.length;
}
