import type { ClothFrame } from './clothFrame.ts';
import type { EndStrip } from './endStrip.ts';
import { columnProfile } from './rowFeatures.ts';

/** A gap covered by this share of what the cloth below covers is covered; by less than the other it is open. */
export const COVERED_GAP = 0.35;
export const OPEN_GAP = 0.2;

/** Farther out than this share of the pitch the neighbours' floats begin. */
const GAP_END = 0.38;
/** Cloth and bare gap must differ by this many colour steps, and by this many times the noise, to be told apart. */
const FEWEST_STEPS = 6;
const OVER_NOISE = 3;
/** What lies on the string differs from the open gaps beside it by this share of what cloth does, or it may be cloth. */
const INKED = 0.5;

/** How far the gaps beside a string are covered, height by height, freed of what bare gaps show by noise. */
interface GapDeparture {
  readonly between: (fromY: number, toY: number) => number;
  /** How far the string itself, or what lies on it, is from the colour of the bare gaps. */
  readonly onString: (fromY: number, toY: number) => number;
  readonly noise: number;
}

/** @param upperY above it the gaps are bare. */
function gapDeparture(
  strip: EndStrip,
  upperY: number,
  frame: ClothFrame,
  sides: readonly ('left' | 'right')[],
): GapDeparture | null {
  const { columns, rows, colours, yStep, yStart } = strip;
  const row = (y: number): number => Math.max(0, Math.min(rows - 1, Math.round((y - yStart) / yStep)));
  const gap: number[] = [];
  for (let k = 0; k < columns; k++) {
    const u = strip.across[k]!;
    const inside = Math.abs(u) >= frame.endHalf + 0.8 * frame.mmPerPx && Math.abs(u) <= GAP_END * frame.pitch;
    if (inside && sides.includes(u < 0 ? 'left' : 'right')) gap.push(k);
  }
  if (gap.length === 0) return null;
  const from = row(upperY + 0.8 * frame.planPass);
  const bare = columnProfile(strip, from, Math.max(from + 3, row(upperY + 3)));
  const departure = (fromY: number, toY: number): number => {
    let sum = 0;
    let n = 0;
    for (let r = row(fromY); r <= row(toY); r++) {
      for (const k of gap) {
        let square = 0;
        for (let c = 0; c < 3; c++) square += (colours[(r * columns + k) * 3 + c]! - bare[k * 3 + c]!) ** 2;
        sum += Math.sqrt(square);
        n++;
      }
    }
    return n > 0 ? sum / n : 0;
  };
  const noise = departure(upperY + 0.8 * frame.planPass, upperY + 3);
  const usual = [0, 1, 2].map((c) => gap.reduce((sum, k) => sum + bare[k * 3 + c]!, 0) / gap.length);
  const onString = (fromY: number, toY: number): number => {
    let sum = 0;
    let n = 0;
    for (let r = row(fromY); r <= row(toY); r++) {
      for (let k = 0; k < columns; k++) {
        if (Math.abs(strip.across[k]!) > 0.5 * frame.endHalf) continue;
        sum += Math.hypot(...usual.map((value, c) => colours[(r * columns + k) * 3 + c]! - value));
        n++;
      }
    }
    return n > 0 ? sum / n : 0;
  };
  return { noise, onString, between: (fromY, toY) => departure(fromY, toY) - noise };
}

/**
 * How far the gaps beside the string are covered between two heights of one end, as a share of what the cloth below
 * covers: about 1 where a float lies, about 0 where there is an ink mark, a knot or a hair, which cover no gap.
 * @returns null where gaps and cloth can't be told apart.
 */
export function gapCover(
  strip: EndStrip,
  lowerY: number,
  upperY: number,
  frame: ClothFrame,
  sides: readonly ('left' | 'right')[],
): number | null {
  const pass = frame.planPass;
  const departure = gapDeparture(strip, upperY, frame, sides);
  if (!departure) return null;
  const below = departure.between(lowerY - 1.4 * pass, lowerY - 0.3 * pass);
  if (below < Math.max(OVER_NOISE * departure.noise, FEWEST_STEPS)) return null;
  const between = departure.between(lowerY + 0.4 * pass, upperY - 0.4 * pass);
  return between > 2 * departure.noise ? between / below : 0;
}

/** Below a mark the cloth must begin within so many passes, or so many mm where passes are low. */
const NEAR = 4;
const NEAR_MM = 4;

/**
 * Below an ink mark on the string: the height from which down the gaps beside it are covered. It is a mark where the gaps
 * are open though farther down cloth covers them, and what lies on the string isn't of the gaps' own colour, as cloth of
 * the table's colour would be.
 * @param markY upper edge of what may be a mark, cloth y, mm.
 * @param open the gaps just below are known to be open: it is a mark.
 * @returns null when it is no mark or can't be told.
 */
export function gapEdge(
  strip: EndStrip,
  markY: number,
  frame: ClothFrame,
  sides: readonly ('left' | 'right')[],
  open: boolean,
): number | null {
  const pass = frame.planPass;
  const departure = gapDeparture(strip, markY, frame, sides);
  if (!departure) return null;
  const near = Math.max(NEAR * pass, NEAR_MM);
  const covered = departure.between(markY - near - 2 * pass, markY - near);
  if (covered < Math.max(OVER_NOISE * departure.noise, FEWEST_STEPS)) return null;
  const beside = departure.between(markY - 1.4 * pass, markY - 0.4 * pass);
  const onString = departure.onString(markY - 1.4 * pass, markY - 0.4 * pass);
  if (!open && (beside > OPEN_GAP * covered || onString < INKED * covered)) return null;
  for (let y = markY; y > markY - near; y -= strip.yStep) {
    if (departure.between(y - 0.7 * pass, y) > 0.5 * covered && departure.between(y, y) > 0.5 * covered) return y;
  }
  return null;
}
