import type { ClothFrame } from './clothFrame.ts';
import type { EndStrip } from './endStrip.ts';
import { median, quantile } from './statistics.ts';
import { ALIKE } from './stringBelow.ts';

/** The fell of an end is the middle of its columns within this share of the pitch either side. */
const MIDDLE = 0.3;
/** Passes above and below a place that are judged column by column. */
const ZONE = 1.5;
/** What lies above may be so much darker by the shade of the cloth, or lighter, and still be the same. */
const DARKEST = 0.5;
const LIGHTEST = 1.15;
/** Cloth and what lies above must differ by this many colour steps for a column to be heard. */
const FEWEST_STEPS = 9;

/** Where the cloth stops column by column. */
export interface ColumnEdges {
  /** Row of the middle column's edge. */
  readonly row: number;
  /** Rows between the upper and the lower quarter of the columns: how torn they are. */
  readonly torn: number;
  /** Columns whose edge lies by that of the middle one. */
  readonly agreeing: readonly number[];
}

/**
 * Finds each column's own edge near a row: every place in the zone is held against what lies above it in its column
 * and against the cloth below, and the column's edge is the height that parts the two best. A turn that stands up
 * beside its end covers some columns only; the middle one decides.
 * @param visible what `visibleString` told of each row; null where it can't be told.
 * @returns null where too few columns can be told.
 */
export function columnEdges(
  strip: EndStrip,
  row: number,
  frame: ClothFrame,
  visible: Uint8Array | null,
): ColumnEdges | null {
  const { yStep, rows, columns, colours } = strip;
  const pass = frame.planPass / yStep;
  const low = Math.round(row - ZONE * pass);
  const high = Math.round(row + ZONE * pass);
  const aboveTo = Math.min(rows, Math.round(high + 2.5 / yStep));
  const belowFrom = Math.round(low - 2.2 * pass);
  if (belowFrom < 0 || aboveTo - high < 4) return null;
  const near: number[] = [];
  for (let k = 0; k < columns; k++) if (Math.abs(strip.across[k]!) <= MIDDLE * frame.pitch) near.push(k);
  const edges: { column: number; row: number }[] = [];
  const away = new Float64Array(3);
  for (const k of near) {
    const bare = middleColour(strip, k, high, aboveTo);
    const power = bare.reduce((sum, value) => sum + value * value, 1);
    // What is left of a colour when as much of the bare one as light may make of it is taken out.
    const depart = (red: number, green: number, blue: number): number => {
      const product = bare[0] * red + bare[1] * green + bare[2] * blue;
      const light = Math.max(DARKEST, Math.min(LIGHTEST, product / power));
      away[0] = red - light * bare[0];
      away[1] = green - light * bare[1];
      away[2] = blue - light * bare[2];
      return Math.hypot(away[0], away[1], away[2]);
    };
    const departAt = (r: number): number => {
      const at = (r * columns + k) * 3;
      return depart(colours[at]!, colours[at + 1]!, colours[at + 2]!);
    };
    const calm: number[] = [];
    for (let r = high; r < aboveTo; r++) calm.push(departAt(r));
    const noise = quantile(calm, 0.8);
    const reach = depart(...middleColour(strip, k, belowFrom, low));
    const way = Float64Array.from(away);
    if (reach < Math.max(FEWEST_STEPS, 2.5 * noise)) continue;
    const onString = Math.abs(strip.across[k]!) <= frame.endHalf;
    let sum = 0;
    let best = 0;
    let place = low;
    for (let r = low; r < high; r++) {
      const off = departAt(r);
      const along = (away[0]! * way[0]! + away[1]! * way[1]! + away[2]! * way[2]!) / reach;
      const aside = Math.sqrt(Math.max(0, off * off - along * along));
      let says = Math.max(-1, Math.min(1, 2 * (along / reach) - 1));
      // A yarn first met here lies another way: that it has left what lies above says enough.
      if (aside > 0.7 * reach && aside > 4 * noise) says = 1;
      // The string's colour without a gap beside it is a float of that colour.
      if (onString && visible?.[r] === ALIKE && says < 0) says = 0.1;
      sum += says;
      if (sum > best) {
        best = sum;
        place = r + 1;
      }
    }
    edges.push({ column: k, row: place });
  }
  if (edges.length < Math.max(4, 0.6 * near.length)) return null;
  const heights = edges.map((edge) => edge.row);
  const middle = median(heights);
  return {
    row: middle,
    torn: quantile(heights, 0.75) - quantile(heights, 0.25),
    agreeing: edges.filter((edge) => Math.abs(edge.row - middle) < 0.45 * pass).map((edge) => edge.column),
  };
}

function middleColour(strip: EndStrip, column: number, from: number, to: number): [number, number, number] {
  const of = (channel: number): number => {
    const values: number[] = [];
    for (let r = from; r < to; r++) values.push(strip.colours[(r * strip.columns + column) * 3 + channel]!);
    return median(values);
  };
  return [of(0), of(1), of(2)];
}
