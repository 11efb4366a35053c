import { notchX } from './coarseCamera.ts';
import { halfEnd } from './coarseLoom.ts';
import type { Expected } from './expected.ts';
import { lookAtString } from './followString.ts';
import type { Photo } from './raster.ts';

/** What is seen where strings should meet a bar. */
export interface BarSeat {
  /** How string-like the ends' places are, 0–1. */
  readonly evidence: number;
  /** Median colour of what lies there. */
  readonly colour: readonly [number, number, number];
}

/**
 * Looks for strings of the plan's breadth at the ends' places near a bar, all moved aside by a share of the pitch.
 * @param heights y of the rows looked at, loom mm.
 */
export function barSeat(
  photo: Photo,
  toPhoto: (x: number, y: number) => { x: number; y: number },
  expected: Expected,
  heights: readonly number[],
  aside: number,
): BarSeat {
  const settings = { pitch: expected.pitch, halfEnd: halfEnd(expected), blur: 0.3, step: 1.5, fine: 0.25 };
  const cores: [number[], number[], number[]] = [[], [], []];
  let sum = 0;
  let looks = 0;
  const every = expected.ends > 30 ? 2 : 1;
  for (let end = 0; end < expected.ends; end += every) {
    for (const y of heights) {
      const x = notchX(expected, expected.firstNotch + end + aside);
      const sample = lookAtString(photo, toPhoto, x, y, 0, settings, 0.26 * expected.pitch);
      looks++;
      if (!sample) continue;
      sum += Math.min(1, sample.profile.contrast / (4 * sample.profile.residual + 4));
      for (let c = 0; c < 3; c++) cores[c]!.push(sample.profile.core[c]!);
    }
  }
  const middle = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1] ?? 0;
  return {
    evidence: sum / Math.max(1, looks),
    colour: [middle(cores[0]), middle(cores[1]), middle(cores[2])],
  };
}

/** Median colour of what lies in the opening beside the warp: the table, as the gaps between strings show it too. */
function besideColour(
  photo: Photo,
  toPhoto: (x: number, y: number) => { x: number; y: number },
  expected: Expected,
  heights: readonly number[],
): readonly number[] | null {
  const values: [number[], number[], number[]] = [[], [], []];
  const left = notchX(expected, expected.firstNotch) - 1.6 * expected.pitch;
  const right = notchX(expected, expected.firstNotch + expected.ends - 1) + 1.6 * expected.pitch;
  const rail = expected.openingWidth / 2 - 8;
  for (const y of heights) {
    for (let x = -rail; x <= rail; x += 1.3) {
      if (x > left && x < right) continue;
      const { x: px, y: py } = toPhoto(x, y);
      const column = Math.round(px);
      const row = Math.round(py);
      if (column < 0 || row < 0 || column >= photo.width || row >= photo.height) continue;
      const at = (row * photo.width + column) * 3;
      for (let c = 0; c < 3; c++) values[c]!.push(photo.rgb[at + c]!);
    }
  }
  if (values[0].length < 20) return null;
  return values.map((list) => list.sort((a, b) => a - b)[list.length >> 1]!);
}

/** Shares of a pitch by which the combs at the top and at the bottom bar were tied beside the strings: −½, 0 or ½. */
export function seatsBeside(
  photo: Photo,
  toPhoto: (x: number, y: number) => { x: number; y: number },
  expected: Expected,
): { top: number; bottom: number; evidence: number; between: number } {
  const height = expected.openingHeight;
  const topRows = [6, 10, 14, 18].map((inside) => height - inside);
  const asides = [0, -0.5, 0.5];
  const tops = asides.map((aside) => barSeat(photo, toPhoto, expected, topRows, aside));
  const gain = (k: number, values: readonly number[]) => values[k]! - values[0]!;
  const beside = besideColour(
    photo,
    toPhoto,
    expected,
    [22, 30, 38].map((inside) => height - inside),
  );
  // What looks like the table beside the warp is a gap, however evenly it lies.
  const topScores = tops.map((seat) => {
    const apart = beside ? Math.hypot(...seat.colour.map((value, c) => value - beside[c]!)) : 0;
    return seat.evidence + 0.5 * Math.min(1, apart / 40);
  });
  let top = 0;
  for (const k of [1, 2]) if (gain(k, topScores) > 0.15 && topScores[k]! > topScores[top]!) top = k;
  const colour = tops[top]!.colour;
  const deepest = Math.min(24, expected.base - 6);
  let bottom = 0;
  if (deepest > 6) {
    const rows = [0.25, 0.5, 0.75, 1].map((share) => 3 + share * (deepest - 3));
    const seats = asides.map((aside) => barSeat(photo, toPhoto, expected, rows, aside));
    const scores = seats.map(
      (seat) => seat.evidence - Math.hypot(...seat.colour.map((value, c) => value - colour[c]!)) / 60,
    );
    for (const k of [1, 2]) if (gain(k, scores) > 0.15 && scores[k]! > scores[bottom]!) bottom = k;
  }
  return {
    top: asides[top]!,
    bottom: asides[bottom]!,
    evidence: topScores[top]!,
    between: Math.max(...[0, 1, 2].filter((k) => (top === 0 ? k !== 0 : k === 0)).map((k) => topScores[k]!)),
  };
}
