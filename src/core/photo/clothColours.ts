import { linearFromEncoded, srgbFromHex } from '../colour/srgb.ts';
import type { ColourReading } from '../model/check.ts';
import type { Piece } from '../model/piece.ts';
import type { Beat } from './beat.ts';
import { median } from './statistics.ts';
import type { WeaveLine } from './weaveLines.ts';

/** A colour as three logarithms of linear light: a change of light adds the same to every yarn. */
type LogColour = readonly [number, number, number];

/** The float that lies on one end for two passes: what a turn shows. */
interface SeenFloat {
  readonly end: number;
  /** Lower pass of the turn it stands for. */
  readonly pass: number;
  readonly colour: LogColour;
}

/** Linear light below this is all noise. */
const DARK = 0.004;

/** Back from lightness and two hues to the logarithms of linear red, green and blue. */
function logOf(light: number, redGreen: number, yellowBlue: number): LogColour {
  // r + g + b = 3 L, r − g = A, (r + g) / 2 − b = B.
  const blue = light - (2 / 3) * yellowBlue;
  const sum = 3 * light - blue;
  const red = (sum + redGreen) / 2;
  const green = (sum - redGreen) / 2;
  const log = (byte: number) => Math.log(linearFromEncoded(Math.max(0, Math.min(1, byte / 255))) + DARK);
  return [log(red), log(green), log(blue)];
}

/**
 * Tells every woven cell's yarn. How each yarn looks in this light is learnt from the picture: the light's colour by
 * the best common change from the yarns' own colours, then each yarn from the cells that came nearest to it.
 * @param chart yarn planned for a cell, as a first guess of where each yarn can be seen; -1 where there is none.
 */
export function readColours(
  lines: readonly WeaveLine[],
  beat: Beat,
  piece: Piece,
  chart: (end: number, pass: number) => number,
): ColourReading | null {
  const floats = lines.flatMap((line) => floatsOf(line, beat));
  if (floats.length < 12) return null;
  const yarns = piece.yarns.map((yarn): LogColour => {
    const colour = srgbFromHex(yarn.colour) ?? { red: 0.5, green: 0.5, blue: 0.5 };
    return [
      Math.log(linearFromEncoded(colour.red) + DARK),
      Math.log(linearFromEncoded(colour.green) + DARK),
      Math.log(linearFromEncoded(colour.blue) + DARK),
    ];
  });
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
  const passes = Math.max(...floats.map((float) => float.pass)) + 2;
  const ends = piece.warp.ends;
  const rows = Array.from({ length: passes }, () => new Array<number>(ends).fill(-1));
  let sure = 0;
  floats.forEach((float, i) => {
    for (const pass of [float.pass, float.pass + 1]) {
      const row = rows[pass];
      if (row) row[float.end] = read[i]!.yarn;
    }
    if (read[i]!.lead > 0.08) sure++;
  });
  return { rows, share: sure / floats.length };
}

/** The middle colour of every turn on one end, the dark between floats left out. */
function floatsOf(line: WeaveLine, beat: Beat): SeenFloat[] {
  const byTurn = new Map<number, { light: number[]; redGreen: number[]; yellowBlue: number[] }>();
  const odd = line.end % 2 === 1;
  // An even end carries the float of the turn's one pass, an odd end of the other: half of a float reaches beyond.
  const shift = odd === beat.evenFirst ? 0.5 : -0.5;
  for (let r = 0; r < line.rows; r++) {
    const passes = beat.passesAt(r * line.yStep, line.end) - shift;
    const turn = Math.floor(passes / 2);
    const inTurn = passes - 2 * turn;
    if (turn < 0 || inTurn < 0.45 || inTurn > 1.55) continue;
    const seen = byTurn.get(turn) ?? { light: [], redGreen: [], yellowBlue: [] };
    seen.light.push(line.colours[r * 3]!);
    seen.redGreen.push(line.colours[r * 3 + 1]!);
    seen.yellowBlue.push(line.colours[r * 3 + 2]!);
    byTurn.set(turn, seen);
  }
  const top = beat.passesAt((line.rows - 1) * line.yStep, line.end);
  return [...byTurn].flatMap(([turn, seen]) =>
    2 * turn + 1 > top + 0.6
      ? []
      : [
          {
            end: line.end,
            pass: 2 * turn,
            colour: logOf(median(seen.light), median(seen.redGreen), median(seen.yellowBlue)),
          },
        ],
  );
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

function nearest(colour: LogColour, looks: readonly LogColour[]): { yarn: number; lead: number } {
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
  return { yarn: best, lead: second - first };
}
