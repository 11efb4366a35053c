import { linearFromEncoded, srgbFromHex } from '../colour/srgb.ts';
import type { ColourReading } from '../model/check.ts';
import type { Piece } from '../model/piece.ts';
import type { Beat } from './beat.ts';
import { fillPassesUnder } from './passesUnder.ts';
import {
  countingFrom,
  floatsOf,
  type LogColour,
  linearOfLog,
  logOfLinear,
  type SeenFloat,
  wovenPasses,
} from './seenFloats.ts';
import { median } from './statistics.ts';
import type { WeaveLine } from './weaveLines.ts';

/** Fewer floats than these tell no colours. */
const FEWEST = 12;

/**
 * Tells every woven cell's yarn. How each yarn looks in this light is learnt from the picture: the light's colour by
 * the best common change from the yarns' own colours, then each yarn from the cells that came nearest to it. The
 * floats are seen; what passes under an end is told from the floats beside it.
 * @param chart yarn planned for a cell, as a first guess of where each yarn can be seen; -1 where there is none.
 */
export function readColours(
  lines: readonly WeaveLine[],
  beat: Beat,
  piece: Piece,
  chart: (end: number, pass: number) => number,
): ColourReading | null {
  const yarns = piece.yarns.map((yarn): LogColour => {
    const colour = srgbFromHex(yarn.colour) ?? { red: 0.5, green: 0.5, blue: 0.5 };
    return logOfLinear(linearFromEncoded(colour.red), linearFromEncoded(colour.green), linearFromEncoded(colour.blue));
  });
  const counting = countingFrom(beat);
  const floats = lines.flatMap((line) => floatsOf(line, beat, counting));
  if (floats.length < FEWEST) return null;
  const { looks, read } = learnLooks(floats, yarns, chart);
  const passes = lines.map((line) => wovenPasses(line, beat, counting));
  const { ends } = piece.warp;
  const rows = Array.from({ length: Math.max(...passes) }, () => new Array<number>(ends).fill(-1));
  const woven = new Array<number>(ends).fill(0);
  lines.forEach((line, i) => {
    woven[line.end] = passes[i]!;
  });
  floats.forEach((float, i) => {
    rows[float.pass]![float.end] = read[i]!.yarn;
  });
  blendsToNeighbours(rows, floats, read, looks);
  fillPassesUnder(rows, woven, (end, pass) => (end + pass + counting.parity) % 2 === 1);
  return { rows, share: read.filter((one) => one.lead > 0.08).length / read.length };
}

/** What the yarns look like here, and which is nearest to each float. */
function learnLooks(
  floats: readonly SeenFloat[],
  yarns: readonly LogColour[],
  chart: (end: number, pass: number) => number,
): { looks: LogColour[]; read: Nearest[] } {
  let looks = inThisLight(floats, yarns, chart);
  let read = floats.map((float) => nearest(float.colour, looks));
  for (let round = 0; round < 4; round++) {
    looks = looks.map((look, yarn) => {
      const own = floats.filter((_, i) => read[i]!.yarn === yarn);
      if (own.length < 4) return look;
      const seen = middle(own.map((float) => float.colour));
      // A yarn may look a little otherwise than its swatch, but doesn't become another.
      return distance(seen, look) < 0.6 ? seen : look;
    });
    read = floats.map((float) => nearest(float.colour, looks));
  }
  return { looks, read };
}

/** What the yarns look like here: each plus the one change of light that brings the planned cells nearest. */
function inThisLight(
  floats: readonly SeenFloat[],
  yarns: readonly LogColour[],
  chart: (end: number, pass: number) => number,
): LogColour[] {
  const changes = [0, 1, 2].map((channel) => {
    const offs = floats.flatMap((float) => {
      const yarn = yarns[chart(float.end, float.pass)];
      return yarn ? [float.colour[channel]! - yarn[channel]!] : [];
    });
    return offs.length > 0 ? median(offs) : 0;
  });
  return yarns.map((yarn) => [yarn[0] + changes[0]!, yarn[1] + changes[1]!, yarn[2] + changes[2]!]);
}

const middle = (colours: readonly LogColour[]): LogColour => [
  median(colours.map((colour) => colour[0])),
  median(colours.map((colour) => colour[1])),
  median(colours.map((colour) => colour[2])),
];

/** Hue counts fully; lightness, which shade changes from float to float, counts less. */
function distance(a: LogColour, b: LogColour): number {
  const red = a[0] - b[0];
  const green = a[1] - b[1];
  const blue = a[2] - b[2];
  const light = (red + green + blue) / 3;
  return Math.sqrt((red - light) ** 2 + (green - light) ** 2 + (blue - light) ** 2 + 0.3 * light * light);
}

interface Nearest {
  readonly yarn: number;
  /** Distance to the yarn's look, and by how much the next yarn's is farther. */
  readonly far: number;
  readonly lead: number;
}

function nearest(colour: LogColour, looks: readonly LogColour[]): Nearest {
  let best = 0;
  let first = Number.POSITIVE_INFINITY;
  let second = Number.POSITIVE_INFINITY;
  looks.forEach((look, yarn) => {
    const far = distance(colour, look);
    if (far < first) {
      second = first;
      first = far;
      best = yarn;
    } else second = Math.min(second, far);
  });
  return { yarn: best, far: first, lead: second - first };
}

/**
 * Where two areas meet, a float may show something of both colours and so look like a third yarn. A yarn that neither
 * side shows is taken for such a blend where a blend explains its colour at least as well.
 */
function blendsToNeighbours(
  rows: number[][],
  floats: readonly SeenFloat[],
  read: readonly Nearest[],
  looks: readonly LogColour[],
): void {
  const seen = rows.map((row) => [...row]);
  const beside = (end: number, pass: number): number[] =>
    [seen[pass - 1]?.[end], seen[pass + 1]?.[end]].filter((yarn) => yarn !== undefined && yarn >= 0) as number[];
  floats.forEach(({ end, pass, colour }, i) => {
    const { yarn, far } = read[i]!;
    const left = beside(end - 1, pass);
    const right = beside(end + 1, pass);
    if (left.includes(yarn) || right.includes(yarn)) return;
    for (const a of left) {
      for (const b of right) {
        if (a === b) continue;
        const blend = nearestBlend(colour, looks[a]!, looks[b]!);
        if (blend.far <= far) rows[pass]![end] = blend.share < 0.5 ? a : b;
      }
    }
  });
}

const BLEND_STEPS = 10;

/** The blend of two looks, as light adds, that comes nearest to a colour; `share` is the second's part. */
function nearestBlend(colour: LogColour, a: LogColour, b: LogColour): { far: number; share: number } {
  const [first, second] = [linearOfLog(a), linearOfLog(b)];
  const at = (share: number, channel: 0 | 1 | 2): number => first[channel] + share * (second[channel] - first[channel]);
  let best = { far: Number.POSITIVE_INFINITY, share: 0 };
  for (let step = 0; step <= BLEND_STEPS; step++) {
    const share = step / BLEND_STEPS;
    const far = distance(colour, logOfLinear(at(share, 0), at(share, 1), at(share, 2)));
    if (far < best.far) best = { far, share };
  }
  return best;
}
