import type { SeededRandom } from '../../../tests/virtual-weaver/seededRandom.ts';
import { hueColour } from '../colour.ts';
import { groundPainter } from '../drawnLoom/ground.ts';
import type { Ground } from '../drawnLoom/scene.ts';
import { hashNoise, smoothNoise } from '../noise.ts';
import { grain } from './sketch.ts';

/** Table tops, floors and cloths seen a little from the side, with nothing on them. */
export async function emptyTable(
  kind: Ground['kind'],
  width: number,
  height: number,
  random: SeededRandom,
): Promise<Buffer> {
  const paint = groundPainter({
    kind,
    colours: [
      hueColour(random.unit(), random.between(0.03, 0.4), random.between(0.2, 0.85)),
      hueColour(random.unit(), random.between(0.03, 0.4), random.between(0.15, 0.85)),
    ],
    size: random.between(4, 26),
    turn: random.between(0, Math.PI),
    seed: random.whole(1, 9999),
  });
  const scale = random.between(0.15, 0.5);
  const leanX = random.between(-0.25, 0.25) / width;
  const leanY = random.between(-0.25, 0.25) / height;
  const data = Buffer.alloc(width * height * 3);
  const out = new Float64Array(3);
  const part = new Float64Array(3);
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      out.fill(0);
      for (const [sx, sy] of [
        [0.25, 0.3],
        [0.75, 0.7],
      ] as const) {
        const depth = 1 + leanX * (column + sx - width / 2) + leanY * (row + sy - height / 2);
        paint(((column + sx - width / 2) * scale) / depth, ((row + sy - height / 2) * scale) / depth, part);
        for (let channel = 0; channel < 3; channel++) out[channel] = out[channel]! + part[channel]! / 2;
      }
      for (let channel = 0; channel < 3; channel++)
        data[(row * width + column) * 3 + channel] = Math.max(0, Math.min(255, out[channel]!));
    }
  return grain(data, width, height, random);
}

/** Noise: every pixel for itself, in colour, soft, or in streaks. */
export async function noisePicture(width: number, height: number, random: SeededRandom): Promise<Buffer> {
  const kind = random.pick(['grey', 'colour', 'soft', 'streaks'] as const);
  const seed = random.whole(1, 99_999);
  const data = Buffer.alloc(width * height * 3);
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++)
      for (let channel = 0; channel < 3; channel++) {
        const own = kind === 'colour' ? seed + channel : seed;
        const value =
          kind === 'soft'
            ? smoothNoise(column / 9, row / 9, own)
            : kind === 'streaks'
              ? smoothNoise(column / 3, row / 160, own)
              : hashNoise(column, row, own);
        data[(row * width + column) * 3 + channel] = Math.round(value * 255);
      }
  return grain(data, width, height, random);
}
