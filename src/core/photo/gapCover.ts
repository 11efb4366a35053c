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

/** How far the gaps beside a string are covered, height by height, freed of what bare gaps show by noise. */
interface GapDeparture {
  readonly between: (fromY: number, toY: number) => number;
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
  return { noise, between: (fromY, toY) => departure(fromY, toY) - noise };
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

/** Passes below a mark within which the cloth must begin. */
const NEAR = 4;

/**
 * Below an ink mark on the string: the height from which down the gaps beside it are covered.
 * @param markY upper edge of the mark, cloth y, mm.
 */
export function gapEdge(
  strip: EndStrip,
  markY: number,
  frame: ClothFrame,
  sides: readonly ('left' | 'right')[],
): number | null {
  const pass = frame.planPass;
  const departure = gapDeparture(strip, markY, frame, sides);
  if (!departure) return null;
  const covered = departure.between(markY - (NEAR + 2) * pass, markY - NEAR * pass);
  if (covered < Math.max(OVER_NOISE * departure.noise, FEWEST_STEPS)) return null;
  for (let y = markY; y > markY - NEAR * pass; y -= strip.yStep) {
    if (departure.between(y - 0.7 * pass, y) > 0.5 * covered && departure.between(y, y) > 0.5 * covered) return y;
  }
  return null;
}
