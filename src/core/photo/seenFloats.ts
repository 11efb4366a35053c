import { linearFromEncoded } from '../colour/srgb.ts';
import type { Beat } from './beat.ts';
import { median } from './statistics.ts';
import type { WeaveLine } from './weaveLines.ts';

/** A colour as three logarithms of linear light: a change of light adds the same to every yarn. */
export type LogColour = readonly [number, number, number];

/** What is seen of one pass on one end it is woven over. */
export interface SeenFloat {
  readonly end: number;
  readonly pass: number;
  readonly colour: LogColour;
}

/** Where passes lie when the weft of pass 0 goes over even ends, or over odd ones. */
export interface Counting {
  /** 0 when pass 0 goes over even ends, else 1. */
  readonly parity: 0 | 1;
  /** What is added to the beat's count so that floats' crests lie in the middle of their passes. */
  readonly shift: number;
}

/** Linear light below this is all noise. */
const DARK = 0.004;

export const logOfLinear = (red: number, green: number, blue: number): LogColour => [
  Math.log(red + DARK),
  Math.log(green + DARK),
  Math.log(blue + DARK),
];

export const linearOfLog = (colour: LogColour): LogColour => [
  Math.exp(colour[0]) - DARK,
  Math.exp(colour[1]) - DARK,
  Math.exp(colour[2]) - DARK,
];

/** Counts passes so that floats are whole ones, the way that moves the base least: that is known to a part of a pass. */
export function countingFrom(beat: Beat): Counting {
  const counting = (parity: 0 | 1): Counting => {
    const off = 0.5 + parity - beat.evenCrest;
    return { parity, shift: off - 2 * Math.round(off / 2) };
  };
  const [even, odd] = [counting(0), counting(1)];
  return Math.abs(even.shift) <= Math.abs(odd.shift) ? even : odd;
}

/** How many passes are woven on an end whose line was read up to its fell. */
export const wovenPasses = (line: WeaveLine, beat: Beat, counting: Counting): number =>
  Math.max(0, Math.round(beat.passesAt(line.rows * line.yStep, line.end) + counting.shift));

/** How far from its crest a float shows, in passes: beyond lies the dark between it and the next. */
const SHOWS = 0.55;

/** The middle colour of every float on one end. */
export function floatsOf(line: WeaveLine, beat: Beat, counting: Counting): SeenFloat[] {
  const byPass = new Map<number, { light: number[]; redGreen: number[]; yellowBlue: number[] }>();
  const lowest = (line.end + counting.parity) % 2;
  const woven = wovenPasses(line, beat, counting);
  for (let r = 0; r < line.rows; r++) {
    const count = beat.passesAt(r * line.yStep, line.end) + counting.shift;
    const pass = lowest + 2 * Math.round((count - 0.5 - lowest) / 2);
    if (pass < 0 || pass >= woven || Math.abs(count - 0.5 - pass) > SHOWS) continue;
    const seen = byPass.get(pass) ?? { light: [], redGreen: [], yellowBlue: [] };
    seen.light.push(line.colours[r * 3]!);
    seen.redGreen.push(line.colours[r * 3 + 1]!);
    seen.yellowBlue.push(line.colours[r * 3 + 2]!);
    byPass.set(pass, seen);
  }
  return [...byPass].map(([pass, seen]) => ({
    end: line.end,
    pass,
    colour: logOf(median(seen.light), median(seen.redGreen), median(seen.yellowBlue)),
  }));
}

/** Back from lightness and two hues to the logarithms of linear red, green and blue. */
function logOf(light: number, redGreen: number, yellowBlue: number): LogColour {
  // r + g + b = 3 L, r − g = A, (r + g) / 2 − b = B.
  const blue = light - (2 / 3) * yellowBlue;
  const sum = 3 * light - blue;
  const red = (sum + redGreen) / 2;
  const green = (sum - redGreen) / 2;
  const linear = (byte: number) => linearFromEncoded(Math.max(0, Math.min(1, byte / 255)));
  return logOfLinear(linear(red), linear(green), linear(blue));
}
