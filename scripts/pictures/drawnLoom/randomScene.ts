import { SeededRandom } from '../../../tests/virtual-weaver/seededRandom.ts';
import { type Colour, hexColour, hueColour } from '../colour.ts';
import type { Course, DrawnShape, Ground, LoomScene, LyingThing } from './scene.ts';

const WOODS: readonly (readonly [string, string])[] = [
  ['#d2a870', '#b98a55'],
  ['#ead7b4', '#d6bd93'],
  ['#6e4a30', '#523422'],
  ['#efeae0', '#dcd5c8'],
  ['#3f3a36', '#2c2926'],
  ['#b5754a', '#94592f'],
];
const WARPS = ['#efe9da', '#efe9da', '#e4dcc6', '#f7f5ef', '#b9a585', '#7d7568', '#2f2f33', '#233252', '#8f2f28'];
const SKINS = ['#e3b596', '#c98f6b', '#8b5a3c', '#5b3a28'];

/** A piecewise course that starts at 0 and strays by about `most` at its height. */
function stray(random: SeededRandom, height: number, most: number): Course {
  const middle = height * random.between(0.2, 0.5);
  const end = height * random.between(0.6, 1);
  return [
    [0, 0],
    [middle, most * random.between(0.1, 0.7)],
    [end, most],
    [end * 1.6, most * random.pick([1, 1, 0.4])],
  ];
}

function drawnColour(random: SeededRandom): Colour {
  if (random.chance(0.25)) return hueColour(0.11, random.between(0.05, 0.35), random.between(0.7, 0.93));
  return hueColour(random.unit(), random.between(0.15, 0.6), random.between(0.18, 0.75));
}

function progress(
  random: SeededRandom,
  ends: number,
  pitch: number,
  pass: number,
  header: number,
  top: number,
): number[] {
  const kind = random.unit();
  const half = (ends * pitch) / 2;
  const low = random.between(0.25, 0.75);
  const at = random.between(-0.45, 0.45) * half;
  const slope = top * (1 - low);
  const height = (x: number): number => {
    if (kind < 0.3) return top;
    if (kind < 0.5) return Math.min(top, top * low + (Math.abs(x - at) * slope) / (half * 0.6));
    if (kind < 0.68) return Math.max(top * low, top - (Math.abs(x - at) * slope) / (half * 0.7));
    if (kind < 0.84) return x < at ? top : top * low;
    return top * low + slope * (0.5 + 0.5 * Math.sin((x / half) * 4 + at));
  };
  const odd = random.chance(0.15) ? 1 : 0;
  return Array.from({ length: ends }, (_, end) => {
    const x = (end - (ends - 1) / 2) * pitch;
    return Math.max(header, 2 * Math.round(height(x) / pass / 2)) + odd;
  });
}

function shapes(random: SeededRandom, half: number, height: number, yarns: number): DrawnShape[] {
  return Array.from({ length: random.whole(1, 3) }, (): DrawnShape => {
    const yarn = random.whole(1, yarns - 1);
    const kind = random.pick(['circle', 'band', 'poly'] as const);
    if (kind === 'circle')
      return {
        kind,
        c: [random.between(-0.5, 0.5) * half, random.between(0.15, 0.6) * height],
        r: half * random.between(0.2, 0.5),
        yarn,
      };
    if (kind === 'band') {
      const from = random.between(0.03, 0.5) * height;
      return { kind, y: [from, from + random.between(0.06, 0.3) * height], yarn };
    }
    const foot = height * random.between(0.02, 0.25);
    return {
      kind,
      pts: [
        [-half * random.between(0.2, 1), foot],
        [half * random.between(0.2, 1), foot * random.between(0.5, 1.5)],
        [half * random.between(-0.5, 0.5), height * random.between(0.4, 0.95)],
      ],
      yarn,
    };
  });
}

function lyingThings(
  random: SeededRandom,
  openingWidth: number,
  base: number,
  top: number,
  openingHeight: number,
): LyingThing[] {
  const things: LyingThing[] = [];
  const side = random.pick([-1, 1]);
  const fellY = base + top;
  if (random.chance(0.14))
    things.push({
      kind: 'hand',
      x: side * openingWidth * random.between(0.3, 0.5),
      y: fellY + random.between(-15, 20),
      z: 14,
      turn: (side < 0 ? 0 : Math.PI) + random.between(-0.5, 0.5),
      size: random.between(95, 125),
      colour: hexColour(random.pick(SKINS)),
    });
  if (random.chance(0.14))
    things.push({
      kind: 'comb',
      x: random.between(-0.2, 0.2) * openingWidth,
      y: fellY + random.between(20, 60),
      z: 7,
      turn: -Math.PI / 2 + random.between(-0.3, 0.3),
      size: random.between(70, 110),
      colour: hexColour(random.pick(['#b98555', '#7c5433', '#dac9a5'])),
    });
  if (random.chance(0.15))
    things.push({
      kind: 'butterfly',
      x: random.between(-0.3, 0.3) * openingWidth,
      y: fellY + random.between(-20, 40),
      z: 5,
      turn: random.between(0, 3.1),
      size: random.between(40, 60),
      colour: drawnColour(random),
    });
  if (random.chance(0.12))
    things.push({
      kind: 'stick',
      x: random.between(-0.1, 0.1) * openingWidth,
      y: Math.min(openingHeight - 20, fellY + random.between(40, 90)),
      z: 4,
      turn: random.between(-0.12, 0.12),
      size: openingWidth * random.between(0.6, 0.95),
      colour: hexColour('#c9a373'),
    });
  if (random.chance(0.1) && openingHeight - fellY > 110)
    things.push({
      kind: 'card',
      x: random.between(-20, 20),
      y: fellY + 55,
      z: 0.8,
      turn: random.between(-0.25, 0.25),
      size: 86,
      colour: drawnColour(random),
    });
  if (random.chance(0.1))
    things.push({
      kind: 'ruler',
      x: side * openingWidth * 0.32,
      y: openingHeight / 2,
      z: 1.5,
      turn: Math.PI / 2 + random.between(-0.1, 0.1),
      size: 300,
      colour: hexColour('#e8d98a'),
    });
  if (random.chance(0.25))
    things.push({
      kind: 'scissors',
      x: side * openingWidth * 0.75,
      y: openingHeight * random.between(0.2, 0.8),
      z: -1,
      turn: random.between(0, 6),
      size: 110,
      colour: hexColour('#9aa0a6'),
    });
  if (random.chance(0.25))
    things.push({
      kind: 'cup',
      x: -side * openingWidth * 0.78,
      y: openingHeight * random.between(0.1, 0.9),
      z: -1,
      turn: 0,
      size: 85,
      colour: drawnColour(random),
    });
  return things;
}

function groundOf(random: SeededRandom): Ground {
  const colour = hueColour(
    random.pick([0.08, 0.1, 0.6, random.unit()]),
    random.between(0.03, 0.35),
    random.between(0.15, 0.85),
  );
  const other = colour.map((part) => Math.max(10, Math.min(245, part + random.between(-70, 70)))) as unknown as Colour;
  return {
    kind: random.pick([
      'plain',
      'plain',
      'planks',
      'planks',
      'stripes',
      'checks',
      'tiles',
      'carpet',
      'speckle',
      'parquet',
      'cloth',
      'dots',
    ] as const),
    colours: [colour, other],
    size: random.between(5, 16),
    turn: random.pick([0, Math.PI / 2, random.between(0, 3.1)]),
    seed: random.whole(1, 9999),
  };
}

/** Draws a scene from a seed: every part varies apart from the others. */
export function randomScene(name: string, seed: number): LoomScene {
  const random = new SeededRandom(seed);
  const pitch = random.pick([4, 5, 5, 6, 6.35, 6.35, 7, 8, 10, 10]);
  const bar = random.pick([15, 15, 20, 25, 30]);
  const notches = pitch < 5.5 ? random.whole(44, 60) : random.whole(26, 46);
  const openingWidth = Math.round(notches * pitch + random.between(0, pitch * 0.9));
  const openingHeight = Math.round(openingWidth * random.between(0.95, 1.4));
  const ends = Math.max(12, random.whole(Math.round(notches * 0.45), Math.round(notches * 0.85)));
  const spare = notches - ends;
  const strings = pitch >= 6 && random.chance(0.6) ? 2 : 1;
  const diameter = Number(
    (pitch * (strings === 2 ? random.between(0.13, 0.2) : random.between(0.16, 0.34))).toFixed(2),
  );
  const warpColour = hexColour(random.pick(WARPS));
  const pass = Number((pitch * random.between(0.14, 0.26)).toFixed(2));
  const base = random.pick([25, 35, 50, 65]);
  const height = Math.round(Math.min(openingHeight - base - 45, 260));
  const header = random.pick([2, 4, 6, 8]);
  const top = random.chance(0.07) ? header * pass : height * random.between(0.18, 0.92);
  const yarnCount = random.whole(3, 4);
  const yarns = Array.from({ length: yarnCount }, () => drawnColour(random).map(Math.round) as unknown as Colour);
  if (random.chance(0.25))
    yarns[0] = warpColour.map((part) => Math.max(8, Math.min(250, part + random.whole(-9, 9)))) as unknown as Colour;
  const half = (ends * pitch) / 2;
  const big = random.pick([0, 0.6, 1.5, 3.5, 6, 9]);
  const sign = (): number => (random.chance(0.2) ? -0.6 : 1);
  const sun = random.chance(0.35);
  const toward = random.between(0, 2 * Math.PI);
  const lean = sun ? random.between(0.4, 1.1) : random.between(0.1, 0.5);
  const long = random.pick([1125, 1500, 1600, 2000, 2000, 2400]);
  const suits = random.chance(0.7);
  const quarter = random.chance(0.2);
  const portrait = suits !== quarter;
  const short = Math.round(long * 0.75);
  const warm = random.between(-0.16, 0.16);
  const glare = random.chance(0.25)
    ? [
        {
          u: random.between(0.25, 0.75),
          v: random.between(0.2, 0.8),
          size: random.between(0.05, 0.14),
          strength: random.between(60, 150),
        },
      ]
    : [];
  return {
    name,
    seed,
    width: portrait ? short : long,
    height: portrait ? long : short,
    loom: {
      pitch,
      notches,
      openingWidth,
      openingHeight,
      bar,
      sideBar: random.chance(0.3) ? random.between(12, 18) : bar,
      depth: random.pick([10, 15, 20]),
      faceBelow: random.between(0, 1.2),
      holds: random.pick(['teeth', 'nails', 'saw-cuts'] as const),
      wood: random.pick(WOODS).map(hexColour) as unknown as readonly [Colour, Colour],
    },
    warp: {
      ends,
      firstNotch: Math.max(0, Math.min(spare, Math.floor(spare / 2) + random.pick([0, 0, 0, 1, -2, 4]))),
      strings,
      diameter,
      colour: warpColour,
      apart: diameter * random.between(0.5, 0.75),
      crossed: strings === 2 && random.chance(0.3) ? [random.whole(1, ends - 2)] : [],
      missing: random.chance(0.15) ? [random.whole(2, ends - 3)] : [],
      // Never by chance: the same seed must go on drawing the same loom.
      swapped: [],
      slack: random.chance(0.12)
        ? [{ end: random.whole(2, ends - 3), bow: random.pick([-1, 1]) * random.between(0.8, 1.6) }]
        : [],
      marked: random.chance(0.25),
    },
    cloth: {
      base,
      height,
      pass,
      header,
      headerYarn: random.whole(0, 1),
      ground: 0,
      shapes: shapes(random, half, height, yarnCount),
      yarns,
      passes: progress(random, ends, pitch, pass, header, top),
      parity: random.pick([0, 1] as const),
      drawInLeft: stray(random, height, big * random.between(0.1, 1) * sign()),
      drawInRight: stray(random, height, big * random.between(0.1, 1) * sign()),
      spread: random.chance(0.2)
        ? [random.between(-0.5, 0.5) * half, half * random.between(0.15, 0.3), random.between(-1, 1.8)]
        : null,
      beat: random.chance(0.35)
        ? [
            [0, 1],
            [height * 0.3, random.between(0.86, 1.08)],
            [height, random.between(0.82, 1.2)],
          ]
        : [
            [0, 1],
            [400, 1],
          ],
      tilt: random.chance(0.2) ? random.between(-4, 4) : 0,
      weft: Number((pass * random.between(1, 1.6)).toFixed(2)),
      hairy: random.pick([0, 200, 600, 1500]),
      twining: random.pick([0, 1, 1, 2] as const),
      tails: random.pick([0, 1, 3, 6]),
      cardboard: random.chance(0.4) ? hexColour(random.pick(['#c9ae82', '#f1efe8', '#7f8c8d', '#d9d4c6'])) : null,
    },
    things: lyingThings(random, openingWidth, base, top, openingHeight),
    ground: groundOf(random),
    gap: random.pick([1, 5, 15, 40]),
    light: {
      x: Math.cos(toward) * lean,
      y: Math.sin(toward) * lean,
      strength: sun ? random.between(0.45, 0.65) : random.between(0.15, 0.35),
      softness: sun ? 0.03 : random.between(0.25, 0.6),
      cast: [1 + warm, 1, 1 - warm],
      exposure: random.between(0.72, 1.18),
      glare,
    },
    camera: {
      pitch: random.between(-0.2, 0.2),
      yaw: random.between(-0.18, 0.18),
      roll: random.between(-0.09, 0.09) + (quarter ? random.pick([-1, 1, 2]) * (Math.PI / 2) : 0),
      fill: random.chance(0.1) ? random.between(1, 1.05) : random.between(0.78, 0.98),
      focal: random.between(0.68, 1),
      targetX: random.between(-10, 10),
      targetY: random.between(-12, 12),
      k1: random.pick([-0.06, -0.035, -0.02, 0, 0.02]),
      k2: random.pick([0, 0, 0.012, -0.01]),
    },
    finish: {
      blur: random.pick([0.45, 0.6, 0.8, 1.1]) * (long > 1700 ? 1.2 : 0.8),
      noise: random.pick([1, 2, 4, 7]),
      quality: random.pick([70, 82, 90, 94]),
      vignette: random.between(0.05, 0.3),
      orientation: random.chance(0.3) ? random.whole(2, 8) : 1,
      mirrored: false,
    },
  };
}
