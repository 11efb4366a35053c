import type { EndReading } from '../model/check.ts';
import type { Beat } from './beat.ts';
import { floatSwing, looksDown } from './floatSwing.ts';
import { median, quantile } from './statistics.ts';
import type { WeaveLine } from './weaveLines.ts';

/** The topmost float's rounded edge is left out, passes. */
const EDGE = 0.5;
/** Floats below this share of what the picture's cloth shows aren't floats. */
const FLAT = 0.3;
/** The cloth's own floats must show at least so evenly before their absence says anything. */
const EVEN = 0.4;
/** So many looks down an end, and at least so many, tell whether its swings keep step with the cloth's. */
const LOOKS = 8;
const FEWEST_LOOKS = 3;
/** Mean cosine of how far they lie out of step, 1 in step, 0 by chance: below the first they don't keep it. */
const OUT_OF_STEP = 0.4;
/** Whether they do says something only where most ends keep step at least so well. */
const KEPT = 0.8;

/** Floats swing by so many times what a table does, whatever yarn they are of. */
const STANDS_OUT = 4;
/** So many passes above all others cloth without floats isn't believed. */
const TOWER = 12;

/**
 * Doubts a fell under which no floats are seen: woven weft swings once in two passes on every end, in step with its
 * neighbours; a card, a comb, a hand or a tail lying over the cloth doesn't swing, and a table's grain not in step.
 */
export function doubtUnwoven(ends: readonly EndReading[], lines: readonly WeaveLine[], beat: Beat): EndReading[] {
  const pass = beat.pass.value;
  const tops = new Map<number, number>();
  const inner: { end: number; size: number; inStep: number }[] = [];
  for (const line of lines) {
    const top = line.rows * line.yStep;
    const found = floatSwing(line, top - EDGE * pass, beat);
    if (found !== null) tops.set(line.end, found.size);
    for (const look of looksDown(line, beat)) inner.push({ end: line.end, ...look });
  }
  if (inner.length < 8 || tops.size < 4) return [...ends];
  const middle = median(inner.map((one) => one.size));
  const plain = quantile([...tops.values()], 0.8);
  // Where the table was taken for cloth on most ends, the rest say what floats look like.
  const usual = plain > STANDS_OUT * middle ? plain : middle;
  // Where floats are seen at the top, do they show all the way down? What lies over others proves nothing.
  const clear = inner.filter((one) => (tops.get(one.end) ?? 0) >= FLAT * usual).map((one) => one.size);
  if (clear.length < 8 || quantile(clear, 0.25) < EVEN * usual) return [...ends];
  const least = FLAT * Math.max(usual, median([...tops.values()]));
  const ofEnd = (end: number) => inner.filter((one) => one.end === end);
  const steps = new Map(lines.map(({ end }) => [end, stepKept(ofEnd(end).map((one) => one.inStep))]));
  const known = [...steps.values()].flatMap((kept) => (kept === null ? [] : [kept]));
  const cares = known.length > 0 && median(known) > KEPT;
  const shown = (end: EndReading): boolean => {
    const outOfStep = cares && (steps.get(end.index) ?? 1) < OUT_OF_STEP;
    return (tops.get(end.index) ?? 0) >= least && !outOfStep;
  };
  const highest = Math.max(0, ...ends.flatMap((end) => (end.fell && shown(end) ? [end.fell.value] : [])));
  return ends.map((end) => {
    if (!end.fell || !tops.has(end.index) || shown(end)) return end;
    // An end that shows no floats all the way down may be woven in a yarn whose floats don't show, though hardly to far
    // above all that shows them: there it is bare string on a table of its colour.
    const own = ofEnd(end.index).map((one) => one.size);
    const without = own.length > 0 && Math.max(...own) < EVEN * usual;
    if (without && end.fell.value < highest + TOWER * pass) return end;
    const why = 'no floats are seen below it, so something may lie over the fell here';
    return { ...end, seen: false, why, fell: null, xAtFell: null };
  });
}

/** How well an end's topmost looks keep step, or null where there are too few. */
function stepKept(inStep: readonly number[]): number | null {
  const looks = inStep.slice(0, LOOKS);
  return looks.length < FEWEST_LOOKS ? null : looks.reduce((sum, one) => sum + one, 0) / looks.length;
}
