import { type ColourEdges, directionsApart, NO_EDGE } from './colourEdges.ts';
import type { Expected } from './expected.ts';
import type { LinesAsFrame } from './linesAsFrame.ts';
import { type FourCorners, type Place, planeColumns, rectangleMap } from './rectangleMap.ts';

/** A frame of the plan's proportions seen in a picture. */
export interface FrameQuad {
  /** The opening's corners in the picture, going round: of one bar left to right, then of the other right to left. */
  readonly corners: FourCorners;
  /**
   * Sum over the eight edges of the share of their length that is there, beyond what the picture shows anywhere, less
   * what a usual camera couldn't see, and what its sides have of one wood's look.
   */
  readonly support: number;
  /** The plan, with the opening that the frame was taken to have. */
  readonly expected: Expected;
}

/** Loom mm (x from the opening's middle, y up from the bottom bar) to pixels of a picture. */
export type LoomToPicture = (x: number, y: number) => Place;

/** Places looked at along one edge. */
const LOOKS = 24;
/** How far behind the best a frame's support may lie: lenses bend edges, so the best straight one need not be right. */
const BEHIND = 1.6;
/** Edges that must be there, of eight, for a frame to be worth a look. */
const LEAST = 2.8;

/**
 * Looks for the frame itself: two pairs of long lines which as outer or inner edges of the wood predict the other edges
 * of it where there truly are some.
 * @param among frames to choose from, as lines.
 * @param focal the usual focal length, px of the picture the edges were found in.
 * @param wood how much of a frame's support its sides' colours give it.
 * @param least edges that must be there, of eight, for a frame to be worth a look.
 * @param behind how far its edges may lie behind those of the best of all.
 * @returns best first, each apart from the better ones.
 */
export function frameQuads(
  edges: ColourEdges,
  among: Iterable<LinesAsFrame>,
  focal: number,
  wood: (map: LoomToPicture, expected: Expected) => number,
  most: number,
  least = LEAST,
  behind = Number.POSITIVE_INFINITY,
): FrameQuad[] {
  const usual = usualSupport(edges);
  const seen: FrameQuad[] = [];
  let best = 0;
  for (const { corners, outer, expected } of among) {
    const needed = Math.max(least, best - BEHIND);
    const skewed = SKEW_COSTS * Math.min(1, (skewOf(corners, expected, edges, focal) / SKEWED) ** 2);
    const support = supportOf(corners, outer, edges, expected, usual, needed + skewed) - skewed;
    if (support < needed) continue;
    seen.push({ corners, support, expected });
    best = Math.max(best, support);
  }
  const found = seen.flatMap(({ corners, support, expected }): FrameQuad[] => {
    if (support < best - behind) return [];
    const map = rectangleMap(corners, expected.openingWidth, expected.openingHeight);
    const own = wood((x, y) => map(x, y - expected.openingHeight / 2), expected);
    return [{ corners, support: support + own, expected }];
  });
  found.sort((a, b) => b.support - a.support);
  const apart: FrameQuad[] = [];
  const near = 0.02 * Math.hypot(edges.width, edges.height);
  for (const one of found) {
    if (apart.length === most) break;
    if (!apart.some((other) => sameFrame(other.corners, one.corners, near))) apart.push(one);
  }
  return apart;
}

/** Whether the same bars are seen at the same places; a near-square frame turned by a quarter is another. */
export function sameFrame(a: FourCorners, b: FourCorners, near: number): boolean {
  const bars = (corners: FourCorners) => Math.atan2(corners[1].y - corners[0].y, corners[1].x - corners[0].x);
  if (Math.abs(Math.sin(bars(a) - bars(b))) > 0.7) return false;
  return a.every((p) => b.some((q) => Math.hypot(p.x - q.x, p.y - q.y) < near));
}

/** A skew of this much takes so much support; lenses and bars' thickness make up for a part of it. */
const SKEWED = 0.05;
const SKEW_COSTS = 1.5;
/** Focal lengths tried, as multiples of the usual one. */
const FOCALS = [0.7, 1, 1.4];

/**
 * How far from a rectangle of the plan's proportions the four-sided figure is for a camera with square pixels: 0 when
 * its two directions can be at right angles and in proportion.
 */
function skewOf(
  corners: FourCorners,
  { openingWidth: w, openingHeight: h }: Expected,
  edges: ColourEdges,
  usualFocal: number,
): number {
  const [across, along] = planeColumns(corners, w, h, edges);
  const skews = FOCALS.map((factor) => {
    const focal = factor * usualFocal;
    const [a, b] = [across, along].map(([x, y, z]) => [x / focal, y / focal, z]) as [number[], number[]];
    const [sizeA, sizeB] = [Math.hypot(...a), Math.hypot(...b)];
    const cosine = (a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!) / (sizeA * sizeB);
    return Math.hypot(cosine, Math.log(sizeA / sizeB));
  });
  return Math.min(...skews);
}

/** How much of a line in no particular place shows an edge of its direction: share per direction, 0–1. */
export function usualSupport({ direction }: ColourEdges): Float64Array {
  const counts = new Float64Array(180);
  for (const value of direction) if (value !== NO_EDGE) counts[value]!++;
  return Float64Array.from({ length: 180 }, (_, d) => {
    let sum = 0;
    for (let lean = -TURN; lean <= TURN; lean++) sum += counts[(d + lean + 180) % 180]!;
    return 1 - (1 - Math.min(0.9, sum / direction.length)) ** (2 * ASIDE + 1);
  });
}

/** How far an edge pixel may lie aside of a predicted edge, px, and turn from it, degrees. */
const ASIDE = 2;
const TURN = 7;

/** Directions near each direction, as a table of 256 for each of 180: an edge pixel's own value tells whether it counts. */
const NEAR: readonly Uint8Array[] = Array.from({ length: 180 }, (_, along) =>
  Uint8Array.from({ length: 256 }, (_, value) => (value < 180 && directionsApart(value, along) <= TURN ? 1 : 0)),
);

/** Support of all eight edges; given up as soon as it can't reach `least`. */
function supportOf(
  corners: FourCorners,
  outer: readonly [boolean, boolean],
  edges: ColourEdges,
  expected: Expected,
  usual: Float64Array,
  least: number,
): number {
  const { openingWidth: w, openingHeight: h, bar } = expected;
  const map = rectangleMap(corners, w, h);
  const rims = [0, bar].map((out) => {
    const x = w / 2 + out;
    const y = h / 2 + out;
    return [map(-x, -y), map(x, -y), map(x, y), map(-x, y)] as const;
  });
  let most = 8;
  // The edges that the quad was not made from come first: they are seldom there by chance.
  for (const made of [false, true]) {
    for (let side = 0; side < 4; side++) {
      const isOuter = outer[side & 1]!;
      const rim = rims[isOuter === made ? 1 : 0]!;
      most -= 1 - edgeSupport(edges, rim[side]!, rim[(side + 1) % 4]!, usual, least - most + 1);
      if (most < least) return 0;
    }
  }
  return most;
}

/** Share of one edge that is there; 0, given up on the way, where it can't reach `least`. */
function edgeSupport(
  { width, height, direction }: ColourEdges,
  from: Place,
  to: Place,
  usual: Float64Array,
  least: number,
): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length = Math.hypot(dx, dy);
  if (length < 1) return 0;
  const along = Math.round((Math.atan2(dy, dx) * 180) / Math.PI + 360) % 180;
  const near = NEAR[along]!;
  const nx = -dy / length;
  const ny = dx / length;
  const anywhere = usual[along]!;
  const needed = LOOKS * (anywhere + Math.max(0, least) * (1 - anywhere)) - 1e-6;
  let hits = 0;
  for (let k = 0; k < LOOKS; k++) {
    if (hits + LOOKS - k < needed) return 0;
    const share = (k + 0.5) / LOOKS;
    const x = from.x + share * dx + 0.5;
    const y = from.y + share * dy + 0.5;
    for (let aside = -ASIDE; aside <= ASIDE; aside++) {
      const column = Math.floor(x + aside * nx);
      const row = Math.floor(y + aside * ny);
      if (column < 0 || row < 0 || column >= width || row >= height) continue;
      if (near[direction[row * width + column]!]) {
        hits++;
        break;
      }
    }
  }
  return Math.max(0, (hits / LOOKS - anywhere) / (1 - anywhere));
}
