import type { SteppedChart } from '../chart/makeChart.ts';
import type { Piece } from '../model/piece.ts';
import { HEADER_AREA } from '../model/plan.ts';
import { areaPatches } from './areaPatches.ts';
import type { Stint } from './orderStints.ts';
import type { Part } from './parts.ts';
import type { Wefts } from './wefts.ts';

interface Place {
  readonly area: number;
  readonly leftArea: number | null;
  readonly rightArea: number | null;
  /** The same patch of that area at both sides: a hole in it, not the room between it and its mirror image. */
  readonly samePatch: boolean;
  readonly low: number;
  readonly high: number;
  readonly firstPass: number;
  readonly lastPass: number;
}

/** The value most often seen; the smaller of equals. */
function mostOften(counts: ReadonlyMap<number, number>): number | null {
  let best: number | null = null;
  for (const [value, count] of counts) {
    const bestCount = best === null ? 0 : counts.get(best)!;
    if (count > bestCount || (count === bestCount && best !== null && value < best)) best = value;
  }
  return best;
}

const bump = (counts: Map<number, number>, value: number): void => {
  counts.set(value, (counts.get(value) ?? 0) + 1);
};

function placeOf(part: Part, stepped: SteppedChart, wefts: Wefts, patches: Int32Array): Place {
  const { ends, areas } = stepped.chart;
  const own = new Map<number, number>();
  const left = new Map<number, number>();
  const right = new Map<number, number>();
  const leftPatch = new Map<number, number>();
  const rightPatch = new Map<number, number>();
  const rows = wefts.wefts[part.weft]!.rows.slice(part.first, part.last + 1);
  let low = ends;
  let high = 0;
  for (const row of rows) {
    const base = row.pass * ends;
    for (let end = row.low; end <= row.high; end++) bump(own, areas[base + end]!);
    if (row.low > 0) {
      bump(left, areas[base + row.low - 1]!);
      bump(leftPatch, patches[base + row.low - 1]!);
    }
    if (row.high < ends - 1) {
      bump(right, areas[base + row.high + 1]!);
      bump(rightPatch, patches[base + row.high + 1]!);
    }
    low = Math.min(low, row.low);
    high = Math.max(high, row.high);
  }
  return {
    area: mostOften(own)!,
    leftArea: mostOften(left),
    rightArea: mostOften(right),
    samePatch: mostOften(leftPatch) === mostOften(rightPatch),
    low,
    high,
    firstPass: rows[0]!.pass,
    lastPass: rows.at(-1)!.pass,
  };
}

/** "the flame" for "Flame"; a name that ends in a figure, or is written in capitals, stands by itself. */
function withArticle(name: string): string {
  if (/\d$/.test(name) || name === name.toUpperCase()) return name;
  return /^the /i.test(name)
    ? name.charAt(0).toLowerCase() + name.slice(1)
    : `the ${name.charAt(0).toLowerCase()}${name.slice(1)}`;
}

const STAGES = ['lower', 'middle', 'upper'] as const;

/** Words for one of several that lie over each other, lowest first. */
function stageWord(index: number, count: number): string {
  if (count === 2) return index === 0 ? 'lower half' : 'upper half';
  if (count === 3) return STAGES[index]!;
  return `stage ${index + 1}`;
}

/** Words for one of several that lie beside each other, from the left. */
function sideWord(index: number, count: number): string {
  if (count === 2) return index === 0 ? 'left' : 'right';
  // `middle` is a height.
  if (count === 3) return ['left', 'centre', 'right'][index]!;
  return `${index + 1} from the left`;
}

type Room = Pick<Place, 'low' | 'high' | 'firstPass' | 'lastPass'>;
const shareEnds = (one: Room, other: Room): boolean => one.low <= other.high && other.low <= one.high;
const sharePasses = (one: Room, other: Room): boolean =>
  one.firstPass <= other.lastPass && other.firstPass <= one.lastPass;

/** Those that hang together, directly or by way of others: lists of places in the list given. */
function clusters(rooms: readonly Room[], together: (one: Room, other: Room) => boolean): number[][] {
  const found: number[][] = [];
  rooms.forEach((room, index) => {
    const joined = found.filter((cluster) => cluster.some((other) => together(rooms[other]!, room)));
    const apart = found.filter((cluster) => !joined.includes(cluster));
    found.splice(0, found.length, ...apart, [...joined.flat(), index]);
  });
  return found;
}

/** For each of several of one name which side it lies at among those beside it; null where nothing lies beside it. */
function sidesOf(rooms: readonly Room[]): readonly (string | null)[] {
  const sides = new Array<string | null>(rooms.length).fill(null);
  for (const row of clusters(rooms, sharePasses)) {
    const inRow = row.map((index) => rooms[index]!);
    const columns = clusters(inRow, shareEnds).sort((one, other) => inRow[one[0]!]!.low - inRow[other[0]!]!.low);
    if (columns.length < 2) continue;
    columns.forEach((column, at) => {
      for (const index of column) sides[row[index]!] = sideWord(at, columns.length);
    });
  }
  return sides;
}

/**
 * A name for every stint by where it lies: "Ground, foot", "Lantern, left of the flame". An area that is woven in one
 * part has its own name only. Where they would be the same, names are told apart by side, then by height.
 */
export function blockNames(
  piece: Piece,
  stepped: SteppedChart,
  wefts: Wefts,
  parts: readonly Part[],
  stints: readonly Stint[],
): readonly string[] {
  const patches = areaPatches(stepped.chart);
  const places = parts.map((part) => placeOf(part, stepped, wefts, patches));
  const middle = stepped.chart.passes / 2;
  const areaName = (place: Place): string => {
    if (place.area === HEADER_AREA) return place.firstPass < middle ? 'Header' : 'Footer';
    return place.area === 0 ? 'Ground' : piece.shapes[place.area - 1]!.name;
  };
  const shapeName = (area: number): string => (area === 0 ? 'the ground' : withArticle(piece.shapes[area - 1]!.name));
  /** Whether an area lies upon another: shapes lie upon the ground and upon the shapes after them. */
  const liesUpon = (area: number | null, under: number): area is number =>
    area !== null && area !== HEADER_AREA && area !== 0 && (under === 0 || area < under);

  const partNames = places.map((place) => {
    const name = areaName(place);
    const alike = places.filter((other) => areaName(other) === name);
    if (alike.length === 1) return name;
    const left = liesUpon(place.leftArea, place.area) ? place.leftArea : null;
    const right = liesUpon(place.rightArea, place.area) ? place.rightArea : null;
    if (left !== null && right !== null) {
      if (shapeName(left) !== shapeName(right)) return `${name}, between ${shapeName(left)} and ${shapeName(right)}`;
      return left === right && place.samePatch
        ? `${name}, inside ${shapeName(left)}`
        : `${name}, between ${shapeName(left)} and its twin`;
    }
    if (right !== null) return `${name}, left of ${shapeName(right)}`;
    if (left !== null) return `${name}, right of ${shapeName(left)}`;
    const isAbove = (one: Place, other: Place) => one.firstPass >= other.lastPass && one !== other;
    const above = alike.some((other) => isAbove(other, place));
    const below = alike.some((other) => isAbove(place, other));
    if (above !== below) return above ? `${name}, foot` : `${name}, head`;
    // Where none of that name lies over another, heights tell nothing apart.
    const levels = alike.some((one) => alike.some((other) => isAbove(one, other)));
    return levels ? `${name}, middle` : name;
  });
  const byName = new Map<string, number[]>();
  partNames.forEach((name, part) => {
    byName.set(name, [...(byName.get(name) ?? []), part]);
  });
  const sided = [...partNames];
  for (const [name, alike] of byName) {
    sidesOf(alike.map((part) => places[part]!)).forEach((side, at) => {
      if (side !== null) sided[alike[at]!] = `${name}, ${side}`;
    });
  }
  const stintsOf = new Map<string, number[]>();
  stints.forEach((stint, index) => {
    const name = sided[stint.part]!;
    stintsOf.set(name, [...(stintsOf.get(name) ?? []), index]);
  });
  const names = new Array<string>(stints.length).fill('');
  for (const [name, indices] of stintsOf) {
    indices.forEach((stint, at) => {
      names[stint] = indices.length === 1 ? name : `${name}, ${stageWord(at, indices.length)}`;
    });
  }
  return names;
}
