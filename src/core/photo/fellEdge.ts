import type { ClothFrame } from './clothFrame.ts';
import type { EndStrip } from './endStrip.ts';
import { columnEdges } from './fellColumns.ts';
import { columnProfile } from './rowFeatures.ts';
import { quantile, robustSigma } from './statistics.ts';
import { visibleShare } from './stringBelow.ts';

/** The upper edge of the topmost float on one end. */
export interface FellEdge {
  /** Cloth height, mm. */
  readonly y: number;
  /** One sigma of noise alone, mm. */
  readonly sigma: number;
  /** How far the float stands out from what lies above it, in noise units. */
  readonly contrast: number;
}

/** Share of the pitch either side of the end over which its cloth is judged: its own float, not the neighbours'. */
const OWN = 0.32;
/** The same on a side where the neighbour is woven higher and shades the gap. */
const HIDDEN_OWN = 0.26;

/**
 * Places the edge near a rough row to a fraction of a row: what lies just above (bare string, gaps) is learnt column
 * by column, and going down the first lasting departure from it is the float's edge, taken where it is half-way.
 * @param sides the gaps to look into; a side that a higher neighbour hides is left out.
 * @param visible rows in which the bare string can be seen, from `visibleString`.
 */
export function fellEdge(
  strip: EndStrip,
  coarseRow: number,
  frame: ClothFrame,
  sides: readonly ('left' | 'right')[],
  visible: Uint8Array | null,
): FellEdge | null {
  const { yStep, rows, columns } = strip;
  const pass = frame.planPass / yStep;
  const aboveFrom = Math.round(coarseRow + 1.5 * pass + 0.4 / yStep);
  const aboveTo = Math.min(rows, Math.round(aboveFrom + 3.5 / yStep));
  if (aboveTo - aboveFrom < 6) return null;
  const own: number[] = [];
  const hiddenReach = Math.max(frame.endHalf * 0.8, HIDDEN_OWN * frame.pitch);
  const reachLeft = sides.includes('left') ? OWN * frame.pitch : hiddenReach;
  const reachRight = sides.includes('right') ? OWN * frame.pitch : hiddenReach;
  for (let k = 0; k < columns; k++) {
    if (strip.across[k]! >= -reachLeft && strip.across[k]! <= reachRight) own.push(k);
  }
  const above = columnProfile(strip, aboveFrom, aboveTo);
  const low = Math.max(0, Math.round(coarseRow - 2.5 * pass - 0.6 / yStep));
  // String and gaps darken by themselves towards the fell, in its shade: each may do so before it counts as departed.
  const parts = [
    { of: own.filter((k) => Math.abs(strip.across[k]!) <= frame.endHalf), darkest: 0.75, lightest: 1.12 },
    { of: own.filter((k) => strip.across[k]! < -frame.endHalf), darkest: 0.45, lightest: 1.15 },
    { of: own.filter((k) => strip.across[k]! > frame.endHalf), darkest: 0.45, lightest: 1.15 },
  ];
  const departure = (r: number): number => {
    let sum = 0;
    for (const { of, darkest, lightest } of parts) {
      let product = 0;
      let power = 1;
      for (const k of of) {
        for (let channel = 0; channel < 3; channel++) {
          const bare = above[k * 3 + channel]!;
          product += bare * strip.colours[(r * columns + k) * 3 + channel]!;
          power += bare * bare;
        }
      }
      const light = Math.max(darkest, Math.min(lightest, product / power));
      for (const k of of) {
        for (let channel = 0; channel < 3; channel++) {
          const d = strip.colours[(r * columns + k) * 3 + channel]! - light * above[k * 3 + channel]!;
          sum += d * d;
        }
      }
    }
    return Math.sqrt(sum / own.length);
  };
  const line = new Float32Array(aboveTo);
  for (let r = low; r < aboveTo; r++) line[r] = departure(r);
  const calm = line.subarray(aboveFrom, aboveTo);
  const quiet = quantile(calm, 0.5);
  const spread = Math.max(robustSigma(calm), 0.4);
  // Going down: the first place where the departure is lasting, then half-way to what it reaches on that float.
  const stay = Math.max(2, Math.round(0.7 * pass));
  const most = Math.max(...line.subarray(low, aboveFrom));
  const least = quiet + Math.max(6 * spread, 1.5 * quiet, 0.25 * (most - quiet), 3);
  let crossing = -1;
  let loud = quiet;
  for (let r = aboveFrom; r > low + stay; r--) {
    if (line[r]! < least) continue;
    let mean = 0;
    for (let s = 0; s < stay; s++) mean += line[r - s]! / stay;
    if (mean < least) continue;
    loud = quantile(line.subarray(Math.max(0, Math.round(r - 1.7 * pass)), r + 1), 0.75);
    const half = (quiet + loud) / 2;
    let edge = r;
    while (edge > low && line[edge]! < half) edge--;
    // Where the string itself goes on below, only the gaps have changed.
    if (visible && visibleShare(visible, edge - 0.9 * pass, edge - 0.15 * pass) > 0.7) continue;
    crossing = edge + Math.max(0, Math.min(1, (line[edge]! - half) / Math.max(1e-6, line[edge]! - line[edge + 1]!)));
    break;
  }
  if (crossing < 0) return null;
  let refined = crossing;
  for (let round = 0; round < 3; round++) refined = halfWay(strip, own, refined, pass, 0.5) ?? refined;
  // Letting contrast weigh more is finer where both ways agree; where they don't, the steadier one stands, in doubt.
  const finer = halfWay(strip, own, refined, pass, 1) ?? refined;
  const apart = Math.abs(finer - refined) * yStep;
  const agreed = apart < 0.3 * frame.planPass;
  if (agreed) refined = finer;
  // Where single columns can be told, their middle decides which of two edges a pass apart is the end's own.
  // Untold, a turn may stand up beside an end at whose sides the cloth is woven to different heights.
  let torn = sides.length === 1 ? (0.95 * frame.planPass) / yStep : 0;
  const told = columnEdges(strip, refined, frame, visible);
  if (told) {
    const up = told.row - refined;
    // Down by more than a little only where the string itself is seen to go on: a float may have its colour.
    const goesOn = visible !== null && visibleShare(visible, told.row + 0.15 * pass, refined - 0.15 * pass) > 0.6;
    const nearby = Math.abs(up) < 0.4 * pass;
    torn = Math.max(told.torn, nearby ? 0 : Math.abs(up));
    if (nearby || (up < 0 && goesOn)) {
      const sharper = told.agreeing.length >= 4 ? halfWay(strip, told.agreeing, told.row, pass, 1) : null;
      refined = sharper !== null && Math.abs(sharper - told.row) < 0.6 * pass ? sharper : told.row;
    }
  }
  const slope = (loud - quiet) / Math.max(1.5, (2 * frame.mmPerPx) / yStep);
  return {
    y: strip.yStart + refined * yStep,
    sigma: Math.hypot(
      (yStep * spread) / Math.max(0.2, slope),
      agreed ? apart / 2 : apart,
      Math.max(0, torn * yStep - 0.25 * frame.planPass) / 2,
    ),
    contrast: (loud - quiet) / spread,
  };
}

/** Seen along the way from what lies just above to the float's own colour, where the picture is half-way. */
function halfWay(
  strip: EndStrip,
  own: readonly number[],
  start: number,
  pass: number,
  weighing: number,
): number | null {
  const { columns, rows, colours } = strip;
  const mean = (from: number, to: number): Float32Array => {
    const line = new Float32Array(columns * 3);
    const low = Math.max(0, Math.floor(from));
    const high = Math.min(rows, Math.max(low + 1, Math.floor(to)));
    for (let r = low; r < high; r++) {
      for (let i = 0; i < line.length; i++) line[i]! += colours[r * columns * 3 + i]! / (high - low);
    }
    return line;
  };
  // A blurred edge reaches a pixel or two to either side.
  const above = mean(start + Math.max(3.5, 0.5 * pass), start + Math.max(6.5, 1.2 * pass));
  const float = mean(start - 1.1 * pass, start - 0.35 * pass);
  const power = own.map((k) => {
    let sum = 0;
    for (let c = 0; c < 3; c++) sum += (float[k * 3 + c]! - above[k * 3 + c]!) ** 2;
    return sum;
  });
  if (power.reduce((sum, value) => sum + value, 0) < own.length) return null;
  // The middle of the columns, each by its contrast: a neighbour's float that reaches into a few must not pull it up.
  const weights = power.map((value) => value ** weighing);
  const half = weights.reduce((sum, value) => sum + value, 0) / 2;
  const shares = new Float64Array(own.length);
  const order = own.map((_, i) => i);
  const share = (r: number): number => {
    own.forEach((k, i) => {
      let sum = 0;
      for (let c = 0; c < 3; c++) {
        const at = k * 3 + c;
        let colour = 0;
        for (let q = -1; q <= 1; q++) colour += colours[Math.max(0, Math.min(rows - 1, r + q)) * columns * 3 + at]! / 3;
        sum += (float[at]! - above[at]!) * (colour - above[at]!);
      }
      shares[i] = sum / (power[i]! + 1);
    });
    order.sort((a, b) => shares[a]! - shares[b]!);
    let sum = 0;
    for (const i of order) {
      sum += weights[i]!;
      if (sum >= half) return shares[i]!;
    }
    return 0;
  };
  const highest = Math.min(rows - 2, Math.ceil(start + Math.max(3, 0.6 * pass)));
  const lowest = Math.max(1, Math.floor(start - 1.2 * pass));
  for (let r = highest; r > lowest; r--) {
    const lower = share(r);
    const upper = share(r + 1);
    if (lower >= 0.5 && upper < 0.5) return r + (lower - 0.5) / (lower - upper);
  }
  return null;
}
