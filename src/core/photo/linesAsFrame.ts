import type { PictureSize } from './camera.ts';
import type { Expected } from './expected.ts';
import type { FrameLines } from './frameLines.ts';
import { type FourCorners, type Place, proportions, rectangleMap } from './rectangleMap.ts';
import { crossing } from './straightLines.ts';

/** Four lines as a frame. */
export interface LinesAsFrame {
  /** The opening's corners, going round: of one bar left to right, then of the other right to left. */
  readonly corners: FourCorners;
  /** Whether the lines are outer edges, of the bars and of the rails. */
  readonly outer: readonly [boolean, boolean];
  readonly expected: Expected;
}

/** Four lines that cross like a frame's, and their crossings going round, a bar first if the bars run along `across`. */
function* crossedPairs(
  { along, across }: FrameLines,
  { width, height }: PictureSize,
): Generator<{ readonly round: FourCorners; readonly seenRatio: number }> {
  const margin = 0.12 * Math.max(width, height);
  const seen = ({ x, y }: Place) => x > -margin && y > -margin && x < width + margin && y < height + margin;
  const least = 0.22 * Math.min(width, height);
  for (let a = 0; a < along.length; a++) {
    for (let b = a + 1; b < along.length; b++) {
      for (let c = 0; c < across.length; c++) {
        const p = crossing(along[a]!, across[c]!);
        const q = crossing(along[b]!, across[c]!);
        if (!p || !q || !seen(p) || !seen(q)) continue;
        const pq = Math.hypot(p.x - q.x, p.y - q.y);
        if (pq < least) continue;
        for (let d = c + 1; d < across.length; d++) {
          const r = crossing(along[b]!, across[d]!);
          const s = crossing(along[a]!, across[d]!);
          if (!r || !s || !seen(r) || !seen(s)) continue;
          const rs = Math.hypot(r.x - s.x, r.y - s.y);
          const qr = Math.hypot(q.x - r.x, q.y - r.y);
          const sp = Math.hypot(s.x - p.x, s.y - p.y);
          if (qr < least || ratio(pq, rs) > 1.28 || ratio(qr, sp) > 1.28) continue;
          yield { round: [p, q, r, s], seenRatio: Math.sqrt((pq * rs) / (qr * sp)) };
        }
      }
    }
  }
}

/** Proportions that differ by less, as a factor, may be the same seen at a slant. */
const LIKE = 1.12;

/** Every pair of pairs of lines with the plan's proportions. */
export function* plannedFrames(
  lines: readonly FrameLines[],
  picture: PictureSize,
  expected: Expected,
): Generator<LinesAsFrame> {
  const { openingWidth, openingHeight, bar } = expected;
  for (const family of lines) {
    for (const { round, seenRatio } of crossedPairs(family, picture)) {
      const [p, q, r, s] = round;
      for (const first of [0, 2 * bar]) {
        for (const second of [0, 2 * bar]) {
          // The bars may run along either family.
          const ways = [
            { corners: [p, q, r, s], aspect: seenRatio, across: first, along: second },
            { corners: [q, r, s, p], aspect: 1 / seenRatio, across: second, along: first },
          ] as const;
          for (const { corners, aspect, across, along } of ways) {
            const width = openingWidth + across;
            const height = openingHeight + along;
            if (ratio(aspect, width / height) >= LIKE) continue;
            yield {
              corners: openingOf(corners, width, height, openingWidth, openingHeight),
              outer: [along > 0, across > 0],
              expected,
            };
          }
        }
      }
    }
  }
}

/** How strings seen in a picture scale it: their direction there, radians mod π, and px per mm across them at a place. */
export interface StringScale {
  readonly direction: number;
  readonly at: (place: Place) => number;
}

/** An opening is looked for between so many times smaller and larger than planned. */
const MOST_OFF = 1.4;
/** What differs by less from the plan, as a share, is as planned. */
const AS_PLANNED = 0.03;
/** Sine of the angle between bars and strings from which on the ones may run across the others. */
const ALONG = 0.9;

const likely = (one: number, planned: number): boolean => one > planned / MOST_OFF && one < planned * MOST_OFF;

/** Every pair of pairs of lines as a frame of any proportions about strings of the planned pitch. */
export function* framesOfAnySize(
  lines: readonly FrameLines[],
  picture: PictureSize,
  expected: Expected,
  { direction, at }: StringScale,
  focal: number,
): Generator<LinesAsFrame> {
  const { openingWidth, openingHeight, bar } = expected;
  for (const family of lines) {
    for (const { round } of crossedPairs(family, picture)) {
      const [p, q, r, s] = round;
      const turn = Math.atan2(q.y - p.y, q.x - p.x) - direction;
      const corners: FourCorners = Math.abs(Math.sin(turn)) > Math.SQRT1_2 ? [p, q, r, s] : [q, r, s, p];
      const map = rectangleMap(corners, 1, 1);
      const [left, right] = [map(-0.5, 0), map(0.5, 0)];
      const across = Math.hypot(right.x - left.x, right.y - left.y) / at(map(0, 0));
      const up = across / proportions(corners, picture, focal);
      for (const outerAcross of [0, 2 * bar]) {
        const width = across - outerAcross;
        if (!likely(width, openingWidth)) continue;
        for (const outerAlong of [0, 2 * bar]) {
          const height = up - outerAlong;
          if (!likely(height, openingHeight)) continue;
          if (Math.max(ratio(width, openingWidth), ratio(height, openingHeight)) < 1 + AS_PLANNED) continue;
          yield {
            corners: openingOf(corners, across, up, width, height),
            outer: [outerAlong > 0, outerAcross > 0],
            expected: { ...expected, openingWidth: width, openingHeight: height },
          };
        }
      }
    }
  }
}

/** Every pair of pairs of lines as a frame as wide as planned or as high, but not both, its rails along some strings. */
export function* framesOneSideOff(
  lines: readonly FrameLines[],
  picture: PictureSize,
  expected: Expected,
  strings: readonly StringScale[],
  focal: number,
): Generator<LinesAsFrame> {
  const { openingWidth, openingHeight, bar } = expected;
  const off = (one: number, planned: number): boolean => likely(one, planned) && ratio(one, planned) > 1 + AS_PLANNED;
  for (const family of lines) {
    for (const { round } of crossedPairs(family, picture)) {
      const [p, q, r, s] = round;
      const turn = Math.atan2(q.y - p.y, q.x - p.x);
      const across = (one: StringScale): number => Math.abs(Math.sin(turn - one.direction));
      const ways: FourCorners[] = [];
      if (strings.some((one) => across(one) > ALONG)) ways.push(round);
      if (strings.some((one) => across(one) < Math.sqrt(1 - ALONG ** 2))) ways.push([q, r, s, p]);
      for (const corners of ways) {
        const aspect = proportions(corners, picture, focal);
        for (const outerAcross of [0, 2 * bar]) {
          for (const outerAlong of [0, 2 * bar]) {
            const frame = (width: number, height: number): LinesAsFrame => ({
              corners: openingOf(corners, width + outerAcross, height + outerAlong, width, height),
              outer: [outerAlong > 0, outerAcross > 0],
              expected: { ...expected, openingWidth: width, openingHeight: height },
            });
            const height = (openingWidth + outerAcross) / aspect - outerAlong;
            if (off(height, openingHeight)) yield frame(openingWidth, height);
            const width = (openingHeight + outerAlong) * aspect - outerAcross;
            if (off(width, openingWidth)) yield frame(width, openingHeight);
          }
        }
      }
    }
  }
}

const ratio = (a: number, b: number): number => Math.max(a / b, b / a);

function openingOf(quad: FourCorners, w: number, h: number, openingWidth: number, openingHeight: number): FourCorners {
  const map = rectangleMap(quad, w, h);
  const x = openingWidth / 2;
  const y = openingHeight / 2;
  return [map(-x, -y), map(x, -y), map(x, y), map(-x, y)];
}
