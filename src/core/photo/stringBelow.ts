import type { ClothFrame } from './clothFrame.ts';
import type { EndStrip } from './endStrip.ts';
import { columnProfile } from './rowFeatures.ts';
import { median } from './statistics.ts';

/** How far above a place the string is learnt, mm. */
const LEARN = 12;
/** So far down the string is followed, mm. */
const FARTHEST = 25;
/** The string may be this much darker (in the shade of the cloth) or lighter and still be the same string. */
const DARKEST = 0.6;
const LIGHTEST = 1.15;
/** String and cloth, and string and gap, must differ by this many colour steps before anything is said. */
const FEWEST_STEPS = 10;

/** A row in which the string itself is seen. */
export const STRING = 1;
/** A row that has the string's colour right across: a float of that colour, most likely. */
export const ALIKE = 2;

/**
 * Where the bare string itself can be seen, whatever lies behind it: `STRING` for rows whose middle has the colour of
 * the string higher up and stands out from both gaps beside it, `ALIKE` where the gaps have that colour too. A tail that
 * looks like the string but has cloth on both sides is neither. Null where string and cloth are too alike to tell.
 */
export function visibleString(strip: EndStrip, row: number, frame: ClothFrame): Uint8Array | null {
  const { yStep, rows } = strip;
  const pass = frame.planPass / yStep;
  const base = Math.max(0, Math.round(-strip.yStart / yStep));
  const from = Math.round(row + 1.5 * pass + 0.4 / yStep);
  const to = Math.min(rows, Math.round(from + LEARN / yStep));
  if (to - from < 8 || row - base < 4 * pass) return null;
  const core = coreColumns(strip, frame);
  const template = columnProfile(strip, from, to);
  const lowest = Math.max(base, Math.round(row - FARTHEST / yStep - 8 * pass));
  const reach = Math.max(1, Math.round(0.2 * pass));
  const { away, beside, gaps } = departures(strip, core, flankColumns(strip, frame), template, lowest, to, reach);
  // An ink mark may take up some of what is learnt from.
  const bare = 1.3 * median(away.subarray(from, to));
  const cloth = median(away.subarray(lowest, Math.max(lowest + 4, Math.round(row - 3 * pass))));
  if (cloth < FEWEST_STEPS || cloth < 2.5 * bare) return null;
  const limit = bare + 0.35 * (cloth - bare);
  const least = Math.max(FEWEST_STEPS, 0.4 * median(beside.subarray(from, to)));
  const onCloth = besideCloth(gaps, from, to, row, pass, lowest);
  const visible = new Uint8Array(rows);
  for (let r = lowest; r < to; r++) {
    if (away[r]! >= limit || onCloth(r)) continue;
    if (beside[r]! >= least) visible[r] = STRING;
    else if (beside[r]! < least / 2) visible[r] = ALIKE;
  }
  return visible;
}

/**
 * Tells rows that have cloth on both sides of the string: their gaps' colours lie by those of the cloth farther down,
 * not by those above.
 * @param gaps six numbers a row: colours of the left and of the right gap.
 */
function besideCloth(
  gaps: Float32Array,
  from: number,
  to: number,
  row: number,
  pass: number,
  lowest: number,
): (r: number) => boolean {
  const middle = (low: number, high: number, at: number): number[] => {
    const out = [0, 1, 2].map((c) => {
      const values: number[] = [];
      for (let r = Math.round(low); r < high; r++) values.push(gaps[r * 6 + at + c]!);
      return median(values);
    });
    return out;
  };
  const far = (r: number, at: number, colour: readonly number[]): number =>
    Math.hypot(...colour.map((value, c) => gaps[r * 6 + at + c]! - value));
  const sides = [0, 3].map((at) => {
    const above = middle(from, to, at);
    const bands = [
      [row - 7 * pass, row - 3 * pass],
      [row - 14 * pass, row - 7 * pass],
    ].flatMap(([low, high]) =>
      high! - Math.max(lowest, low!) > 2 * pass ? [middle(Math.max(lowest, low!), high!, at)] : [],
    );
    return {
      at,
      cloth: bands.map((colour) => ({ colour, reach: 0.35 * Math.hypot(...colour.map((v, c) => v - above[c]!)) })),
    };
  });
  return (r) => sides.every(({ at, cloth }) => cloth.some(({ colour, reach }) => far(r, at, colour) < reach));
}

/** A tail that lies across the string hides no more of it than this, in passes, or in mm where passes are low. */
const TAIL = 4;
const TAIL_MM = 4;
/** Below a tail so many passes of bare string must be seen: what little shows between floats is no bare string. */
const BARE_BELOW = 1.8;

/**
 * Follows the bare string itself down from where its cloth seems to stop: shadows, stripes and boards behind the
 * strings change the gaps, and a tail may lie across, but the string goes on.
 * @param row the row above the topmost row of cloth, roughly.
 * @returns the row at which the string goes under the cloth: `row` itself where there is nothing to correct.
 */
export function stringBelow(strip: EndStrip, visible: Uint8Array, row: number, frame: ClothFrame): number {
  const { yStep } = strip;
  const pass = frame.planPass / yStep;
  const lowest = Math.max(1, Math.round(row - FARTHEST / yStep));
  const goesOn = visibleShare(visible, row - 1.3 * pass, row - 0.2 * pass) >= 0.9;
  const start = goesOn ? row - 0.3 * pass : belowTail(visible, row, pass, TAIL_MM / yStep);
  if (start === null) return row;
  let at = Math.round(start);
  while (at > lowest && visibleShare(visible, at - Math.max(2, 0.7 * pass), at) > 0.5) at--;
  return at;
}

/** The upper end of the bare string seen below something that lies across it; null where there is none. */
function belowTail(visible: Uint8Array, row: number, pass: number, tail: number): number | null {
  const bare = Math.max(4, BARE_BELOW * pass);
  for (let at = row - 0.2 * pass; at > row - Math.max(TAIL * pass, tail); at--) {
    if (visibleShare(visible, at - bare, at) >= 0.95) return at;
  }
  return null;
}

/** In what share of the rows from `low` up to `high` the string can be seen. */
export function visibleShare(visible: Uint8Array, low: number, high: number): number {
  let n = 0;
  let seen = 0;
  for (let r = Math.max(0, Math.round(low)); r < Math.min(visible.length, Math.round(high)); r++) {
    n++;
    if (visible[r] === STRING) seen++;
  }
  return n > 0 ? seen / n : 0;
}

/** A string stands out from its gaps by no less than this share of what it does near its notch, or this many steps. */
const STILL = 0.25;
const STILL_STEPS = 9;

/**
 * Whether nothing that could be a string is seen just above a place: there the middle is like both gaps, though farther
 * up the string stands out. A ruler or a hand of the string's own colour lies there.
 */
export function coveredAbove(strip: EndStrip, row: number, bareFrom: number, frame: ClothFrame): boolean {
  const { yStep, rows } = strip;
  const pass = frame.planPass / yStep;
  const from = Math.round(row + pass + 0.4 / yStep);
  const to = Math.min(rows, Math.round(from + 4 / yStep));
  const topFrom = Math.max(bareFrom, to);
  const topTo = Math.min(rows, Math.round(topFrom + 25 / yStep));
  if (to - from < 6 || topTo - topFrom < 12) return false;
  const core = coreColumns(strip, frame);
  const flanks = flankColumns(strip, frame);
  const standsOut = (low: number, high: number): number => {
    const out: number[] = [];
    const mean = (r: number, of: readonly number[]): number[] =>
      [0, 1, 2].map((c) => of.reduce((sum, k) => sum + strip.colours[(r * strip.columns + k) * 3 + c]!, 0) / of.length);
    for (let r = low; r < high; r += 2) {
      const middle = mean(r, core);
      const [left, right] = flanks.map((flank) => Math.hypot(...mean(r, flank).map((value, c) => value - middle[c]!)));
      out.push(Math.max(left!, right!));
    }
    return median(out);
  };
  const here = standsOut(from, to);
  const usual = standsOut(topFrom, topTo);
  return here < STILL_STEPS && here < STILL * usual;
}

function coreColumns(strip: EndStrip, frame: ClothFrame): number[] {
  const near = Array.from(strip.across, (u, k) => ({ u: Math.abs(u), k })).sort((a, b) => a.u - b.u);
  const reach = Math.max(0.7 * frame.endHalf, near[2]!.u);
  return near.filter((column) => column.u <= reach + 1e-6).map((column) => column.k);
}

/** The gaps just beside the string, left and right. */
function flankColumns(strip: EndStrip, frame: ClothFrame): readonly [number[], number[]] {
  const most = strip.across[strip.columns - 1]!;
  const from = Math.min(frame.endHalf + 1.2 * frame.mmPerPx, 0.8 * most);
  const to = Math.min(most, Math.max(from + 1.5 * frame.mmPerPx, from + 0.1 * frame.pitch));
  const of = (sign: number): number[] =>
    Array.from(strip.across.keys()).filter((k) => sign * strip.across[k]! >= from && sign * strip.across[k]! <= to);
  return [of(-1), of(1)];
}

/**
 * Row by row, how far the string's own columns depart from the template, but for its lightness, and how far they stand
 * out from the gap that differs the less.
 */
function departures(
  strip: EndStrip,
  core: readonly number[],
  flanks: readonly [readonly number[], readonly number[]],
  template: Float32Array,
  from: number,
  to: number,
  reach: number,
): { away: Float32Array; beside: Float32Array; gaps: Float32Array } {
  const { columns, colours } = strip;
  const away = new Float32Array(strip.rows);
  const beside = new Float32Array(strip.rows);
  const gaps = new Float32Array(strip.rows * 6);
  let power = 1;
  for (const k of core) for (let c = 0; c < 3; c++) power += template[k * 3 + c]! ** 2;
  const seen = new Float32Array(columns * 3);
  const mean = (of: readonly number[], c: number): number => {
    let sum = 0;
    for (const k of of) sum += seen[k * 3 + c]!;
    return sum / Math.max(1, of.length);
  };
  for (let r = from; r < to; r++) {
    seen.fill(0);
    const low = Math.max(0, r - reach);
    const high = Math.min(strip.rows - 1, r + reach);
    for (let q = low; q <= high; q++) {
      for (let i = 0; i < seen.length; i++) seen[i]! += colours[q * columns * 3 + i]! / (high - low + 1);
    }
    let product = 0;
    for (const k of core) for (let c = 0; c < 3; c++) product += template[k * 3 + c]! * seen[k * 3 + c]!;
    const light = Math.max(DARKEST, Math.min(LIGHTEST, product / power));
    // The middle of the columns: a turn that stands up beside the string may lie over some of it.
    away[r] = median(
      core.map((k) => Math.hypot(...[0, 1, 2].map((c) => seen[k * 3 + c]! - light * template[k * 3 + c]!))),
    );
    flanks.forEach((flank, f) => {
      for (let c = 0; c < 3; c++) gaps[r * 6 + f * 3 + c] = mean(flank, c);
    });
    const [left, right] = flanks.map((flank) =>
      Math.hypot(...[0, 1, 2].map((c) => mean(core, c) - mean(flank, c))),
    ) as [number, number];
    beside[r] = Math.min(left, right);
  }
  return { away, beside, gaps };
}
