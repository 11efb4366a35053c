import type { Beat } from './beat.ts';
import { median } from './statistics.ts';
import type { WeaveLine } from './weaveLines.ts';

/** How the floats of one end are seen in one look. */
export interface FloatSwing {
  /** Size of the swing of lightness with the beat, as a share of the lightness. */
  readonly size: number;
  /** Cosine of how far it lies out of step with the cloth's floats: 1 in step, -1 where gaps should be. */
  readonly inStep: number;
}

/** Passes of one look at the floats: three floats of one end. */
export const FLOATS_SEEN = 6;
/** Where light burns the yarn out nothing is told: mean of three colours, 0 to 255. */
const BURNT = 225;
/** Keeps near-black from being all noise. */
const DARK = 8;

/**
 * How one end's lightness swings with the beat over the passes below a height.
 * @param toY mm up from the base.
 * @param passes of the look.
 * @returns null where too little of the line lies there, or light burns it out.
 */
export function floatSwing(line: WeaveLine, toY: number, beat: Beat, passes = FLOATS_SEEN): FloatSwing | null {
  const from = Math.round((toY - passes * beat.pass.value) / line.yStep);
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
  const crest = beat.evenCrest + (line.end % 2);
  let real = 0;
  let imaginary = 0;
  values.forEach((value, i) => {
    const off = value - mean - (product / power) * (i - middle);
    const weight = 1 - Math.cos((2 * Math.PI * (i + 0.5)) / n);
    const angle = Math.PI * (beat.passesAt((from + i) * line.yStep, line.end) - crest);
    real += weight * off * Math.cos(angle);
    imaginary += weight * off * Math.sin(angle);
  });
  const size = Math.hypot(real, imaginary);
  return { size: (2 * size) / n, inStep: size > 0 ? real / size : 0 };
}

/**
 * Looks down an end's line, from a little below its top to its foot, half as far apart as a usual one is high.
 * @param passes of each look.
 */
export function looksDown(line: WeaveLine, beat: Beat, passes = FLOATS_SEEN): FloatSwing[] {
  const pass = beat.pass.value;
  const looks: FloatSwing[] = [];
  for (
    let y = line.rows * line.yStep - (FLOATS_SEEN + 2) * pass;
    y > FLOATS_SEEN * pass;
    y -= 0.5 * FLOATS_SEEN * pass
  ) {
    const look = floatSwing(line, y, beat, passes);
    if (look !== null) looks.push(look);
  }
  return looks;
}

/** How much the floats of a cloth swing as a rule; NaN where nothing of it can be told. */
export const usualSwing = (lines: readonly WeaveLine[], beat: Beat, passes = FLOATS_SEEN): number =>
  median(lines.flatMap((line) => looksDown(line, beat, passes).map((look) => look.size)));
