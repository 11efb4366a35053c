import { boldEdges, type ColourEdges, directionsApart, NO_EDGE } from './colourEdges.ts';
import type { Expected } from './expected.ts';
import { crossing, LineVotes, type StraightLine } from './straightLines.ts';

interface Place {
  readonly x: number;
  readonly y: number;
}

/** A frame of the plan's proportions seen in a picture. */
export interface FrameQuad {
  /** The opening's corners in the picture, going round: of one bar left to right, then of the other right to left. */
  readonly corners: readonly [Place, Place, Place, Place];
  /**
   * Sum over the eight edges of the share of their length that is there, beyond what the picture shows anywhere, less
   * what a usual camera couldn't see, and what its sides have of one wood's look.
   */
  readonly support: number;
}

/** Loom mm (x from the opening's middle, y up from the bottom bar) to pixels of a picture. */
export type LoomToPicture = (x: number, y: number) => Place;

/** Lines tried per family, and how far they may lean from it, degrees: a slanting view turns them. */
const LINES = 20;
const OUTERMOST = 7;
/** Of lines along bold edges so many, which a striped table's many lines might crowd out. */
const BOLD_LINES = 8;
const BOLD_OUTERMOST = 5;
/** Two lines no farther from each other than this, px and degrees, are the same. */
const SAME_PLACE = 4;
const SAME_WAY = 2;
const LEAN = 13;
/** Places looked at along one edge. */
const LOOKS = 24;
/** How far behind the best a frame's support may lie: lenses bend edges, so the best straight one need not be right. */
const BEHIND = 1.6;
/** Edges that must be there, of eight, for a frame to be worth a look. */
const LEAST = 2.8;

/**
 * Looks for the frame itself: two pairs of long lines whose crossings have the plan's proportions, and which as outer
 * or inner edges of the wood predict the other edges of it where there truly are some.
 * @param focal the usual focal length, px of the picture the edges were found in.
 * @param wood how much of a frame's support its sides' colours give it.
 * @returns best first, each apart from the better ones.
 */
export function frameQuads(
  edges: ColourEdges,
  expected: Expected,
  focal: number,
  wood: (map: LoomToPicture) => number,
  most: number,
): FrameQuad[] {
  const votes = new LineVotes(edges);
  const bold = new LineVotes(boldEdges(edges));
  const usual = usualSupport(edges);
  const found: FrameQuad[] = [];
  let best = 0;
  for (const direction of votes.rightAngles(3)) {
    const family = (towards: number): StraightLine[] =>
      apartFrom(votes.family(towards, LEAN, LINES, OUTERMOST), bold.family(towards, LEAN, BOLD_LINES, BOLD_OUTERMOST));
    const along = family(direction);
    const across = family(direction + 90);
    for (const { corners, outer } of quadsOf(along, across, edges, expected)) {
      const least = Math.max(LEAST, best - BEHIND);
      const skewed = SKEW_COSTS * Math.min(1, (skewOf(corners, expected, edges, focal) / SKEWED) ** 2);
      const support = supportOf(corners, outer, edges, expected, usual, least + skewed) - skewed;
      if (support < least) continue;
      const map = rectangleMap(corners, expected.openingWidth, expected.openingHeight);
      found.push({ corners, support: support + wood((x, y) => map(x, y - expected.openingHeight / 2)) });
      best = Math.max(best, support);
    }
  }
  found.sort((a, b) => b.support - a.support);
  const apart: FrameQuad[] = [];
  const near = 0.02 * Math.hypot(edges.width, edges.height);
  for (const one of found) {
    if (apart.length === most) break;
    if (!apart.some((other) => sameFrame(other.corners, one.corners, near))) apart.push(one);
  }
  return apart;
}

/** Some lines and those of the others that aren't among them. */
function apartFrom(some: readonly StraightLine[], others: readonly StraightLine[]): StraightLine[] {
  const same = (a: StraightLine, b: StraightLine): boolean =>
    Math.abs(a.distance - b.distance) <= SAME_PLACE && Math.abs(a.direction - b.direction) <= SAME_WAY;
  return [...some, ...others.filter((line) => !some.some((other) => same(line, other)))];
}

/** Whether the same bars are seen at the same places; a near-square frame turned by a quarter is another. */
export function sameFrame(a: FrameQuad['corners'], b: FrameQuad['corners'], near: number): boolean {
  const bars = (corners: FrameQuad['corners']) => Math.atan2(corners[1].y - corners[0].y, corners[1].x - corners[0].x);
  if (Math.abs(Math.sin(bars(a) - bars(b))) > 0.7) return false;
  return a.every((p) => b.some((q) => Math.hypot(p.x - q.x, p.y - q.y) < near));
}

/**
 * Every pair of pairs of lines with the plan's proportions, as the opening's corners, and whether the lines are the outer
 * edges of the bars and of the rails.
 */
function* quadsOf(
  along: readonly StraightLine[],
  across: readonly StraightLine[],
  { width, height }: ColourEdges,
  expected: Expected,
): Generator<{ corners: FrameQuad['corners']; outer: readonly [boolean, boolean] }> {
  const { openingWidth, openingHeight, bar } = expected;
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
          const seenRatio = Math.sqrt((pq * rs) / (qr * sp));
          for (const outerAcross of [0, 2 * bar]) {
            for (const outerAlong of [0, 2 * bar]) {
              const w = openingWidth + outerAcross;
              const h = openingHeight + outerAlong;
              // The bars may run along either family.
              if (ratio(seenRatio, w / h) < 1.12) {
                yield {
                  corners: openingOf([p, q, r, s], w, h, openingWidth, openingHeight),
                  outer: [outerAlong > 0, outerAcross > 0],
                };
              }
              const turnedWidth = openingWidth + outerAlong;
              const turnedHeight = openingHeight + outerAcross;
              if (ratio(seenRatio, turnedHeight / turnedWidth) < 1.12) {
                yield {
                  corners: openingOf([q, r, s, p], turnedWidth, turnedHeight, openingWidth, openingHeight),
                  outer: [outerAcross > 0, outerAlong > 0],
                };
              }
            }
          }
        }
      }
    }
  }
}

const ratio = (a: number, b: number): number => Math.max(a / b, b / a);

/** The map that takes a w × h rectangle about its middle, its corners going round, to a four-sided figure. */
function rectangleMap(
  [p, q, r, s]: readonly [Place, Place, Place, Place],
  w: number,
  h: number,
): (x: number, y: number) => Place {
  // P. Heckbert, "Fundamentals of texture mapping and image warping", 1989: unit square to quadrilateral.
  const sx = p.x - q.x + r.x - s.x;
  const sy = p.y - q.y + r.y - s.y;
  const dx1 = q.x - r.x;
  const dx2 = s.x - r.x;
  const dy1 = q.y - r.y;
  const dy2 = s.y - r.y;
  const det = dx1 * dy2 - dx2 * dy1;
  const g = (sx * dy2 - dx2 * sy) / det;
  const k = (dx1 * sy - sx * dy1) / det;
  const a = q.x - p.x + g * q.x;
  const b = s.x - p.x + k * s.x;
  const d = q.y - p.y + g * q.y;
  const e = s.y - p.y + k * s.y;
  return (x, y) => {
    const u = x / w + 0.5;
    const v = y / h + 0.5;
    const scale = 1 / (g * u + k * v + 1);
    return { x: (a * u + b * v + p.x) * scale, y: (d * u + e * v + p.y) * scale };
  };
}

function openingOf(
  quad: readonly [Place, Place, Place, Place],
  w: number,
  h: number,
  openingWidth: number,
  openingHeight: number,
): FrameQuad['corners'] {
  const map = rectangleMap(quad, w, h);
  const x = openingWidth / 2;
  const y = openingHeight / 2;
  return [map(-x, -y), map(x, -y), map(x, y), map(-x, y)];
}

/** A skew of this much takes so much support; lenses and bars' thickness make up for a part of it. */
const SKEWED = 0.05;
const SKEW_COSTS = 1.5;
/** Focal lengths tried, as multiples of the usual one. */
const FOCALS = [0.7, 1, 1.4];

/**
 * How far from a rectangle of the plan's proportions the four-sided figure is for a camera with square pixels: 0 when
 * its two directions can be at right angles and in proportion. Hartley and Zisserman, Multiple View Geometry, 8.1.
 */
function skewOf(
  corners: FrameQuad['corners'],
  { openingWidth: w, openingHeight: h }: Expected,
  { width, height }: ColourEdges,
  usualFocal: number,
): number {
  const map = rectangleMap(corners, w, h);
  const middle = map(0, 0);
  // Columns of the plane's picture from the vanishing shares along both directions.
  const column = (x: number, y: number): [number, number, number] => {
    const ahead = map(x, y);
    const behind = map(-x, -y);
    // A point t along the direction is seen at (middle + t c) / (1 + t g): both halves give c and g.
    const far = Math.hypot(ahead.x - middle.x, ahead.y - middle.y);
    const near = Math.hypot(behind.x - middle.x, behind.y - middle.y);
    const g = (near - far) / (near + far);
    const size = Math.hypot(x, y);
    return [
      ((1 + g) * ahead.x - middle.x - (g * width) / 2) / size,
      ((1 + g) * ahead.y - middle.y - (g * height) / 2) / size,
      g / size,
    ];
  };
  const across = column(w / 2, 0);
  const along = column(0, h / 2);
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
  corners: FrameQuad['corners'],
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
      most -= 1 - edgeSupport(edges, rim[side]!, rim[(side + 1) % 4]!, usual);
      if (most < least) return 0;
    }
  }
  return most;
}

function edgeSupport({ width, height, direction }: ColourEdges, from: Place, to: Place, usual: Float64Array): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const length = Math.hypot(dx, dy);
  if (length < 1) return 0;
  const along = Math.round((Math.atan2(dy, dx) * 180) / Math.PI + 360) % 180;
  const near = NEAR[along]!;
  const nx = -dy / length;
  const ny = dx / length;
  let hits = 0;
  for (let k = 0; k < LOOKS; k++) {
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
  const anywhere = usual[along]!;
  return Math.max(0, (hits / LOOKS - anywhere) / (1 - anywhere));
}
