import { SeededRandom } from '../../../tests/virtual-weaver/seededRandom.ts';
import type { Weave } from './weave.ts';

/** Hairs and hanging tails, drawn once on a fine sheet over the cloth: yarn index + 1 and how light each place is. */
export interface LooseEnds {
  readonly yarnAt: (x: number, y: number) => number;
  readonly lightAt: (x: number, y: number) => number;
}

const STEP = 0.16;

export function looseEnds(weave: Weave): LooseEnds {
  const { scene, ends, fell, centreX, colours } = weave;
  const { base } = scene.cloth;
  const half = (ends * scene.loom.pitch) / 2;
  const left = centreX - half - 25;
  const bottom = base - 12;
  const columns = Math.ceil((2 * half + 50) / STEP);
  const rows = Math.ceil((Math.max(...fell) + 40) / STEP);
  const yarn = new Uint8Array(columns * rows);
  const light = new Uint8Array(columns * rows);
  const random = new SeededRandom(scene.seed + 77);

  const dab = (x: number, y: number, radius: number, index: number): void => {
    const c0 = Math.max(0, Math.floor((x - radius - left) / STEP));
    const c1 = Math.min(columns - 1, Math.ceil((x + radius - left) / STEP));
    const r0 = Math.max(0, Math.floor((y - radius - bottom) / STEP));
    const r1 = Math.min(rows - 1, Math.ceil((y + radius - bottom) / STEP));
    for (let row = r0; row <= r1; row++)
      for (let column = c0; column <= c1; column++) {
        const away = Math.hypot(left + column * STEP - x, bottom + row * STEP - y) / radius;
        if (away >= 1) continue;
        yarn[row * columns + column] = index + 1;
        light[row * columns + column] = Math.round(255 * (0.6 + 0.4 * Math.sqrt(1 - away * away)));
      }
  };
  /** A thread that wanders from a place, drawn dab by dab. */
  const thread = (
    x: number,
    y: number,
    way: number,
    length: number,
    radius: number,
    curl: number,
    index: number,
  ): void => {
    const step = Math.max(radius * 0.5, STEP);
    let direction = way;
    for (let gone = 0; gone < length; gone += step) {
      dab(x, y, radius, index);
      direction += random.between(-curl, curl) * Math.sqrt(step);
      x += Math.cos(direction) * step;
      y += Math.sin(direction) * step;
    }
  };
  const cellYarn = (end: number, y: number): number =>
    colours[Math.max(0, Math.min(colours.length - 1, Math.floor(y / scene.cloth.pass)))]?.[end] ?? -1;

  for (let k = 0; k < scene.cloth.hairy; k++) {
    const edge = random.chance(0.35);
    const end = edge ? random.pick([0, ends - 1]) : random.whole(0, ends - 1);
    const y = random.between(0, fell[end]!);
    const index = cellYarn(end, y);
    if (index < 0) continue;
    const out = edge ? (end === 0 ? -1 : 1) * scene.loom.pitch * 0.4 : random.between(-0.5, 0.5) * scene.loom.pitch;
    thread(weave.insideX(end, y) + out, base + y, random.between(0, 6.28), random.between(1, 4.5), 0.09, 0.5, index);
  }
  for (let k = 0; k < scene.cloth.tails; k++) {
    const end = random.whole(0, ends - 1);
    const y = fell[end]! * random.between(0.5, 1);
    const index = Math.max(0, cellYarn(end, y - 2));
    const way = random.chance(0.8) ? random.between(-2.4, -0.7) : random.between(0.5, 2.5);
    thread(weave.insideX(end, y), base + y, way, random.between(12, 45), scene.cloth.pass * 0.75, 0.22, index);
  }
  const place = (x: number, y: number): number => {
    const column = Math.round((x - left) / STEP);
    const row = Math.round((y - bottom) / STEP);
    return column >= 0 && row >= 0 && column < columns && row < rows ? row * columns + column : -1;
  };
  return {
    yarnAt: (x, y) => {
      const at = place(x, y);
      return at < 0 ? 0 : yarn[at]!;
    },
    lightAt: (x, y) => {
      const at = place(x, y);
      return at < 0 ? 0 : light[at]! / 255;
    },
  };
}
