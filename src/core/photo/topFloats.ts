import type { EndReading } from '../model/check.ts';
import { measurement } from '../model/measurement.ts';
import type { Beat } from './beat.ts';
import { floatSwing, usualSwing } from './floatSwing.ts';
import { median } from './statistics.ts';
import type { WeaveLine } from './weaveLines.ts';

/** The edge of the topmost float is left out, passes. */
const EDGE = 0.3;
/** Under a fell that is one, so many passes show floats; with less than the share of what the cloth shows there are none. */
const CERTAIN = { passes: 3, share: 0.2 } as const;
/** Over one float less says something too, but yarn without gloss and loose top passes may show as little. */
const LIKELY = { passes: 2, share: 0.2 } as const;
/** Then the fell may lie by so many passes lower, one sigma. */
const LOWER = 1;
/** The topmost floats, in looks at so many passes, keep step with the cloth at least so well; else a tail may lie there. */
const TOPMOST = [3, 4] as const;
const OUT_OF_STEP = 0.6;
/** Said only where those of most ends keep it so well. */
const KEPT = 0.85;

/**
 * Doubts a fell right below which no float is seen: where a shadow ends on the table, or a stripe between the strings,
 * was taken for the cloth's top; or where what is seen there doesn't keep step: a tail, or a turn of the next area.
 */
export function doubtTopFloats(ends: readonly EndReading[], lines: readonly WeaveLine[], beat: Beat): EndReading[] {
  const pass = beat.pass.value;
  const lacking = ({ passes, share }: typeof CERTAIN | typeof LIKELY): Set<number> => {
    const usual = usualSwing(lines, beat, passes);
    const short = lines.filter((line) => {
      const look = floatSwing(line, line.rows * line.yStep - EDGE * pass, beat, passes);
      return look !== null && look.size < share * usual;
    });
    return new Set(short.map((line) => line.end));
  };
  const certain = lacking(CERTAIN);
  const likely = lacking(LIKELY);
  const steps = new Map(
    lines.map((line) => {
      const looks = TOPMOST.map((passes) => floatSwing(line, line.rows * line.yStep - EDGE * pass, beat, passes));
      return [line.end, Math.min(...looks.map((look) => look?.inStep ?? 1))];
    }),
  );
  const evenly = median([...steps.values()]) > KEPT;
  const outOfStep = (end: EndReading): boolean => evenly && (steps.get(end.index) ?? 1) < OUT_OF_STEP;
  return ends.map((end) => {
    if (!end.fell) return end;
    if (certain.has(end.index)) {
      const why = 'no floats are seen below it, so something may lie over the fell here';
      return { ...end, seen: false, why, fell: null, xAtFell: null };
    }
    if (!likely.has(end.index) && !outOfStep(end)) return end;
    const { value, sigma, n, source } = end.fell;
    return { ...end, fell: measurement(value, Math.hypot(sigma, LOWER * pass), n, source) };
  });
}
