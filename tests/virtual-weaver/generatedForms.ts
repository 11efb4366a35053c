import type { PathCommand, ShapeForm } from '../../src/core/model/piece.ts';
import { type ClothPoint, clothMm, mm } from '../../src/core/model/units.ts';
import type { SeededRandom } from './seededRandom.ts';

/** The drawing ground: half the width to either side of x = 0, from 0 up to the height, in mm. */
export interface Ground {
  readonly halfWidth: number;
  readonly height: number;
}

const point = (x: number, y: number): ClothPoint => ({ x: clothMm(x), y: clothMm(y) });
const polygon = (points: readonly (readonly [number, number])[]): ShapeForm => ({
  kind: 'polygon',
  points: points.map(([x, y]) => point(x, y)),
});

/** A straight edge at an angle of 5° to 85° from the weft: a triangle or a leaning stripe, to either side. */
export function diagonal(random: SeededRandom, { halfWidth, height }: Ground): ShapeForm {
  const slope = Math.tan((random.between(5, 85) * Math.PI) / 180);
  const lean = random.chance(0.5) ? 1 : -1;
  const base = random.between(0, 0.6) * height;
  const run = Math.min(random.between(0.3, 2) * halfWidth, (height - base) / slope);
  const x = random.between(-1, 0.6) * halfWidth * lean;
  const tip = [x + lean * run, base + run * slope] as const;
  if (random.chance(0.4)) return polygon([[x, base], tip, [x, tip[1]]]);
  if (random.chance(0.5)) return polygon([[x, base], [x + lean * run, base], tip]);
  const wide = random.between(0.1, 0.8) * halfWidth * lean;
  return polygon([[x, base], [x + wide, base], [tip[0] + wide, tip[1]], tip]);
}

function star(random: SeededRandom, { halfWidth, height }: Ground): ShapeForm {
  const spikes = random.whole(3, 9);
  const outer = random.between(0.3, 1) * Math.min(halfWidth, height / 2);
  const inner = outer * random.between(0.2, 0.8);
  const turn = random.between(0, Math.PI);
  const [x, y] = [random.between(-0.5, 0.5) * halfWidth, random.between(0.3, 0.7) * height];
  return polygon(
    Array.from({ length: spikes * 2 }, (_, index) => {
      const reach = index % 2 === 0 ? outer : inner;
      const angle = turn + (index * Math.PI) / spikes;
      return [x + reach * Math.cos(angle), y + reach * Math.sin(angle)] as const;
    }),
  );
}

/** Letters L, U and T, zigzags and combs: overhangs, valleys and hills that must wait for each other. */
export function concave(random: SeededRandom, ground: Ground): ShapeForm {
  if (random.chance(0.3)) return star(random, ground);
  const { halfWidth, height } = ground;
  const [x, y] = [-random.between(0.3, 1) * halfWidth, random.between(0, 0.4) * height];
  const [w, h] = [random.between(0.6, 1.6) * halfWidth, random.between(0.3, 0.6) * height];
  const [a, b] = [random.between(0.15, 0.45), random.between(0.15, 0.45)];
  const upside = random.chance(0.5);
  const at = (u: number, v: number) => [x + u * w, y + (upside ? 1 - v : v) * h] as const;
  const outlines = [
    [at(0, 0), at(1, 0), at(1, b), at(a, b), at(a, 1), at(0, 1)],
    [at(0, 0), at(1, 0), at(1, 1), at(1 - a, 1), at(1 - a, b), at(a, b), at(a, 1), at(0, 1)],
    [at(a, 0), at(1 - a, 0), at(1 - a, b), at(1, b), at(1, 1), at(0, 1), at(0, b), at(a, b)],
    [
      at(0, 0),
      at(0.25, a),
      at(0.5, 0),
      at(0.75, a),
      at(1, 0),
      at(1, 1),
      at(0.75, 1 - b),
      at(0.5, 1),
      at(0.25, 1 - b),
      at(0, 1),
    ],
    [
      at(0, 0),
      at(1, 0),
      at(1, 1),
      at(0.8, 1),
      at(0.8, b),
      at(0.6, b),
      at(0.6, 1),
      at(0.4, 1),
      at(0.4, b),
      at(0.2, b),
      at(0.2, 1),
      at(0, 1),
    ],
  ];
  return polygon(random.pick(outlines));
}

export function round(random: SeededRandom, { halfWidth, height }: Ground): ShapeForm {
  return {
    kind: 'ellipse',
    centre: point(random.between(-0.7, 0.7) * halfWidth, random.between(0.1, 0.9) * height),
    radiusX: mm(random.between(0.08, 0.8) * halfWidth),
    radiusY: mm(random.between(0.05, 0.4) * height),
  };
}

function ring(points: readonly (readonly [number, number])[]): PathCommand[] {
  return [
    ...points.map(([x, y], index): PathCommand => ({ to: index === 0 ? 'move' : 'line', x, y })),
    { to: 'close' },
  ];
}

/** A path with one or two holes, straight or curved. */
export function holed(random: SeededRandom, { halfWidth, height }: Ground): ShapeForm {
  const [x, y] = [random.between(-0.3, 0.3) * halfWidth, random.between(0.35, 0.65) * height];
  const [rx, ry] = [random.between(0.4, 0.9) * halfWidth, random.between(0.2, 0.45) * height];
  const around = (share: number, corners: number, turn: number, dx = 0) =>
    ring(
      Array.from({ length: corners }, (_, index) => {
        const angle = turn + (2 * Math.PI * index) / corners;
        return [x + dx + rx * share * Math.cos(angle), y + ry * share * Math.sin(angle)] as const;
      }),
    );
  const outer = around(1, random.whole(3, 12), random.between(0, 1));
  const holes = random.chance(0.4)
    ? [...around(0.25, random.whole(3, 8), 0, -rx * 0.35), ...around(0.25, random.whole(3, 8), 1, rx * 0.35)]
    : around(random.between(0.2, 0.7), random.whole(3, 10), random.between(0, 3));
  return { kind: 'path', commands: [...outer, ...holes], fillRule: 'evenodd', origin: 'drawing' };
}

/** A freehand loop: smooth, often with a waist, sometimes crossing itself. */
export function freehand(random: SeededRandom, { halfWidth, height }: Ground): ShapeForm {
  const knots = random.whole(3, 7);
  const [x, y] = [random.between(-0.4, 0.4) * halfWidth, random.between(0.3, 0.7) * height];
  const places = Array.from({ length: knots * 3 }, (_, index) => {
    const angle = (2 * Math.PI * index) / (knots * 3);
    const reach = random.between(0.15, 0.9);
    return [x + reach * halfWidth * Math.cos(angle), y + reach * 0.5 * height * Math.sin(angle)] as const;
  });
  const start = places[0]!;
  const commands: PathCommand[] = [{ to: 'move', x: start[0], y: start[1] }];
  for (let knot = 0; knot < knots; knot += 1) {
    const [one, two, stop] = [places[knot * 3 + 1]!, places[knot * 3 + 2]!, places[(knot * 3 + 3) % places.length]!];
    commands.push({ to: 'cubic', x1: one[0], y1: one[1], x2: two[0], y2: two[1], x: stop[0], y: stop[1] });
  }
  commands.push({ to: 'close' });
  return { kind: 'path', commands, fillRule: random.chance(0.5) ? 'nonzero' : 'evenodd', origin: 'freehand' };
}

export function band(random: SeededRandom, { height }: Ground): ShapeForm {
  const from = random.between(0, 0.95) * height;
  return { kind: 'band', from: clothMm(from), to: clothMm(from + random.between(0.01, 0.3) * height) };
}

export function arch(random: SeededRandom, { halfWidth, height }: Ground): ShapeForm {
  return {
    kind: 'arch',
    base: point(random.between(-0.6, 0.6) * halfWidth, random.between(0, 0.4) * height),
    width: mm(random.between(0.2, 1.4) * halfWidth),
    springing: mm(random.between(0, 0.3) * height),
    rise: mm(random.between(0.05, 0.3) * height),
  };
}

/** Upright or nearly upright, one to three ends wide: the smallest areas a hand weaves. */
export function sliver(random: SeededRandom, { halfWidth, height }: Ground, pitch: number): ShapeForm {
  const x = random.between(-1, 1) * halfWidth;
  const wide = random.between(0.5, 3) * pitch;
  const base = random.between(0, 0.7) * height;
  const top = base + random.between(0.02, 0.5) * height;
  const lean = random.between(-2, 2) * pitch;
  return polygon([
    [x, base],
    [x + wide, base],
    [x + wide + lean, top],
    [x + lean, top],
  ]);
}

/** Any corners in any order, so it may cross itself. */
export function scribble(random: SeededRandom, { halfWidth, height }: Ground): ShapeForm {
  return polygon(
    Array.from(
      { length: random.whole(3, 12) },
      () => [random.between(-1.1, 1.1) * halfWidth, random.between(-0.1, 1.1) * height] as const,
    ),
  );
}
