import type { EndReading } from '../model/check.ts';
import type { Beat } from './beat.ts';
import { median, quantile } from './statistics.ts';
import type { WeaveLine } from './weaveLines.ts';

/** Passes of one look at the floats: three floats of one end. */
const WINDOW = 6;
/** The topmost float's rounded edge is left out, passes. */
const EDGE = 0.5;
/** Floats below this share of what the picture's cloth shows aren't floats. */
const FLAT = 0.3;
/** The cloth's own floats must show at least so evenly before their absence says anything. */
const EVEN = 0.4;
/** Nor does it where light burns the yarn out: mean of three colours, 0 to 255. */
const BURNT = 225;
/** Keeps near-black from being all noise. */
const DARK = 8;

/**
 * Doubts a fell under which no floats are seen: woven weft swings once in two passes on every end; a card, a comb, a
 * hand or a tail lying over the cloth doesn't.
 */
export function doubtUnwoven(ends: readonly EndReading[], lines: readonly WeaveLine[], beat: Beat): EndReading[] {
  const pass = beat.pass.value;
  const tops = new Map<number, number>();
  const inner: { end: number; swing: number }[] = [];
  for (const line of lines) {
    const top = line.rows * line.yStep;
    const found = swing(line, top - EDGE * pass, beat);
    if (found !== null) tops.set(line.end, found);
    for (let y = top - (WINDOW + 2) * pass; y > WINDOW * pass; y -= 0.5 * WINDOW * pass) {
      const within = swing(line, y, beat);
      if (within !== null) inner.push({ end: line.end, swing: within });
    }
  }
  if (inner.length < 8 || tops.size < 4) return [...ends];
  const usual = median(inner.map((one) => one.swing));
  // Where floats are seen at the top, do they show all the way down? What lies over others proves nothing.
  const clear = inner.filter((one) => (tops.get(one.end) ?? 0) >= FLAT * usual).map((one) => one.swing);
  if (clear.length < 8 || quantile(clear, 0.25) < EVEN * usual) return [...ends];
  const least = FLAT * Math.max(usual, median([...tops.values()]));
  return ends.map((end) => {
    const found = tops.get(end.index);
    if (!end.fell || found === undefined || found >= least) return end;
    // An end that shows no floats all the way down may be woven in a yarn whose floats don't show.
    const own = inner.filter((one) => one.end === end.index).map((one) => one.swing);
    if (own.length > 0 && Math.max(...own) < EVEN * usual) return end;
    const why = 'no floats are seen below it, so something may lie over the fell here';
    return { ...end, seen: false, why, fell: null, xAtFell: null };
  });
}

/** Size of the swing of one end's lightness (as a share of it) with the beat, over the passes below a height. */
function swing(line: WeaveLine, toY: number, beat: Beat): number | null {
  const from = Math.round((toY - WINDOW * beat.pass.value) / line.yStep);
  const to = Math.min(line.rows, Math.round(toY / line.yStep));
  const n = to - from;
  if (from < 0 || n < 6) return null;
  let light = 0;
  const values: number[] = [];
  for (let r = from; r < to; r++) {
    light += line.colours[r * 3]! / n;
    values.push(Math.log(Math.max(DARK, line.colours[r * 3]!)));
  }
  if (light > BURNT) return null;
  // Shade that changes evenly up the end is no float.
  const middle = (n - 1) / 2;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  let product = 0;
  let power = 0;
  values.forEach((value, i) => {
    product += (i - middle) * (value - mean);
    power += (i - middle) ** 2;
  });
  let real = 0;
  let imaginary = 0;
  values.forEach((value, i) => {
    const off = value - mean - (product / power) * (i - middle);
    const weight = 1 - Math.cos((2 * Math.PI * (i + 0.5)) / n);
    const angle = Math.PI * beat.passesAt((from + i) * line.yStep, line.end);
    real += weight * off * Math.cos(angle);
    imaginary += weight * off * Math.sin(angle);
  });
  return (2 * Math.hypot(real, imaginary)) / n;
}
