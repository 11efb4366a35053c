import type { ClothFrame } from './clothFrame.ts';
import type { EndStrip } from './endStrip.ts';
import { boxMean, median } from './statistics.ts';

/** How many numbers describe one row of a strip. */
export const FEATURES = 11;
/** Place of the likeness to the bare profile: 1 for the bare string's own shape, about 0 in cloth. */
export const LIKENESS = 0;
/** Place of the ripple up and down over the string. */
export const RIPPLE = 9;
/** The same over the gaps. */
export const GAP_RIPPLE = 10;
/** Place of how strong that shape is against the template: 1 bare, about 0 in cloth. */
export const STRENGTH = 1;

/**
 * One row of a strip in numbers that hardly heed the light: how like the bare string's profile it is and how strongly
 * so, the hue of the string and of the gaps beside it, their lightness, and the liveliness across and up and down (the
 * floats of a weft make ripples; a bare string has none).
 */
export interface RowFeatures {
  readonly rows: number;
  /** Row-major, `FEATURES` a row, each scaled so that 1 is about what noise does. */
  readonly values: Float32Array;
}

/** Which columns lie on the string and which in the gaps. */
export interface StripColumns {
  readonly all: readonly number[];
  readonly core: readonly number[];
  readonly gap: readonly number[];
}

/** What is looked at: the string with the gap on one side only, or the string alone. */
export type View = 'left' | 'right' | 'string';

/**
 * The columns of one view. They are judged apart, because a neighbour woven higher hides the gap it borders, and two
 * such neighbours leave only the string.
 */
export function stripColumns(strip: EndStrip, frame: ClothFrame, view: View): StripColumns {
  if (view === 'string') return stringColumns(strip, frame);
  const sign = view === 'left' ? -1 : 1;
  const signed = Array.from(strip.across, (u, k) => ({ u: u * sign, k }));
  const most = Math.max(...signed.map((column) => column.u));
  const coreHalf = Math.max(frame.endHalf * 0.85, most * 0.12);
  const all = signed.filter((column) => column.u >= -coreHalf);
  const core = all.filter((column) => column.u <= coreHalf);
  const gapFrom = Math.min(frame.endHalf + 1.3 * frame.mmPerPx, most * 0.82);
  return {
    all: all.map((c) => c.k),
    core: core.map((c) => c.k),
    gap: all.filter((c) => c.u >= gapFrom).map((c) => c.k),
  };
}

/** The string and its very edges. */
function stringColumns(strip: EndStrip, frame: ClothFrame): StripColumns {
  const columns = Array.from(strip.across, (u, k) => ({ u: Math.abs(u), k }));
  const least = Math.min(...columns.filter((column) => column.u > 0).map((column) => column.u));
  const reach = Math.max(frame.endHalf + 0.8 * frame.mmPerPx, 2.1 * least);
  const all = columns.filter((column) => column.u <= reach);
  return {
    all: all.map((c) => c.k),
    core: all.filter((c) => c.u <= reach * 0.5).map((c) => c.k),
    gap: all.filter((c) => c.u > reach * 0.5).map((c) => c.k),
  };
}

/** The middle colour of every column over the rows from `from` to `to`, three numbers a column. */
export function columnProfile(strip: EndStrip, from: number, to: number): Float32Array {
  const profile = new Float32Array(strip.columns * 3);
  const step = Math.max(1, Math.floor((to - from) / 120));
  for (let k = 0; k < strip.columns; k++) {
    for (let channel = 0; channel < 3; channel++) {
      const values: number[] = [];
      for (let r = from; r < to; r += step) values.push(strip.colours[(r * strip.columns + k) * 3 + channel]!);
      profile[k * 3 + channel] = median(values);
    }
  }
  return profile;
}

/** A bare end's profile follows what slowly changes behind it (shade, a slanting stripe) over about this much, mm. */
const MEMORY = 6;
/** A row less like the profile than this teaches it nothing: cloth, a mark, a hand. */
const LIKE_ENOUGH = 0.65;

/**
 * @param smooth the strip's colours from `smoothedUp`.
 * @param template the bare end's own profile near the notch, from `columnProfile`; it is followed downward.
 */
export function rowFeatures(
  strip: EndStrip,
  smooth: Float32Array,
  columns: StripColumns,
  template: Float32Array,
  frame: ClothFrame,
): RowFeatures {
  const { rows } = strip;
  const reach = smoothingReach(strip, frame);
  const usual = Float32Array.from(template);
  const pace = Math.min(0.5, strip.yStep / MEMORY);
  const values = new Float32Array(rows * FEATURES);
  const coreRipple = ripple(strip, columns.core, reach);
  const gapRipple = ripple(strip, columns.gap, reach);
  const width = strip.columns * 3;
  const core = new Float64Array(3);
  const gap = new Float64Array(3);
  const shape: Shape = { values: new Float32Array(width), power: 0 };
  centredShape(usual, columns.all, shape);
  for (let r = rows - 1; r >= 0; r--) {
    const start = r * width;
    meanColour(smooth, start, columns.core, core);
    meanColour(smooth, start, columns.gap, gap);
    const { product, power } = against(smooth, start, shape, columns.all);
    const at = r * FEATURES;
    values[at + LIKENESS] = product / Math.sqrt(shape.power * power + 1);
    values[at + STRENGTH] = product / (shape.power + 1);
    values[at + 2] = (100 * core[1]!) / (core[0]! + DARK);
    values[at + 3] = (100 * core[2]!) / (core[0]! + DARK);
    values[at + 4] = (100 * gap[1]!) / (gap[0]! + DARK);
    values[at + 5] = (100 * gap[2]!) / (gap[0]! + DARK);
    values[at + 6] = 30 * Math.log(core[0]! + DARK);
    values[at + 7] = 20 * Math.log(gap[0]! + DARK);
    values[at + 8] = 4 * Math.log(power / columns.all.length + 1);
    values[at + RIPPLE] = coreRipple[r]!;
    values[at + GAP_RIPPLE] = gapRipple[r]!;
    if (values[at + LIKENESS]! > LIKE_ENOUGH && values[at + STRENGTH]! > LIKE_ENOUGH) {
      for (const k of columns.all) {
        for (let i = 3 * k; i < 3 * k + 3; i++) usual[i]! += pace * (smooth[start + i]! - usual[i]!);
      }
      centredShape(usual, columns.all, shape);
    }
  }
  return { rows, values };
}

/** Keeps the hue of near-black from being all noise. */
const DARK = 12;

/** @param start where the row begins in `colours`. @param out three numbers. */
function meanColour(colours: Float32Array, start: number, set: readonly number[], out: Float64Array): void {
  for (let channel = 0; channel < 3; channel++) {
    let sum = 0;
    for (let i = 0; i < set.length; i++) sum += colours[start + set[i]! * 3 + channel]!;
    out[channel] = sum / set.length;
  }
}

/** Rows either side that one row's description takes in: a pass, so that a float and its gap are seen together. */
const smoothingReach = (strip: EndStrip, frame: ClothFrame): number =>
  Math.max(1, Math.round(frame.planPass / strip.yStep));

/** The strip with every column smoothed up and down over a pass either side. */
export function smoothedUp(strip: EndStrip, frame: ClothFrame): Float32Array {
  const reach = smoothingReach(strip, frame);
  const { rows, columns, colours } = strip;
  const width = columns * 3;
  const smooth = new Float32Array(colours.length);
  const sum = new Float64Array(width);
  let from = 0;
  let to = 0;
  for (let r = 0; r < rows; r++) {
    for (; to < Math.min(rows, r + reach + 1); to++)
      for (let k = 0; k < width; k++) sum[k]! += colours[to * width + k]!;
    for (; from < r - reach; from++) for (let k = 0; k < width; k++) sum[k]! -= colours[from * width + k]!;
    for (let k = 0; k < width; k++) smooth[r * width + k] = sum[k]! / (to - from);
  }
  return smooth;
}

/** Logarithm of the spread of lightness up and down within `reach` rows either side. */
function ripple(strip: EndStrip, set: readonly number[], reach: number): Float32Array {
  const line = new Float32Array(strip.rows);
  for (let r = 0; r < strip.rows; r++) {
    let sum = 0;
    for (let i = 0; i < set.length; i++) sum += strip.colours[(r * strip.columns + set[i]!) * 3]!;
    line[r] = sum / set.length;
  }
  const squares = boxMean(
    line.map((value) => value * value),
    reach,
  );
  const means = boxMean(line, reach);
  return means.map((value, r) => 4 * Math.log(Math.max(0, squares[r]! - value * value) + 1));
}

interface Shape {
  readonly values: Float32Array;
  power: number;
}

/** A profile with the mean of each channel taken out, written into `shape`. */
function centredShape(profile: Float32Array, columns: readonly number[], shape: Shape): void {
  shape.power = 0;
  for (let channel = 0; channel < 3; channel++) {
    let middle = 0;
    for (let i = 0; i < columns.length; i++) middle += profile[columns[i]! * 3 + channel]!;
    middle /= columns.length;
    for (let i = 0; i < columns.length; i++) {
      const at = columns[i]! * 3 + channel;
      const value = profile[at]! - middle;
      shape.values[at] = value;
      shape.power += value * value;
    }
  }
}

/** The row of `colours` that begins at `start`, against a shape. */
function against(
  colours: Float32Array,
  start: number,
  shape: Shape,
  columns: readonly number[],
): { product: number; power: number } {
  let product = 0;
  let power = 0;
  for (let channel = 0; channel < 3; channel++) {
    let middle = 0;
    for (let i = 0; i < columns.length; i++) middle += colours[start + columns[i]! * 3 + channel]!;
    middle /= columns.length;
    for (let i = 0; i < columns.length; i++) {
      const at = columns[i]! * 3 + channel;
      const value = colours[start + at]! - middle;
      product += value * shape.values[at]!;
      power += value * value;
    }
  }
  return { product, power };
}
