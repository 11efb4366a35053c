import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import type { Brief } from '../../src/core/project/brief.ts';
import { SeededRandom } from '../../tests/virtual-weaver/seededRandom.ts';
import { trueLoomToPhoto } from '../photo/trueCamera.ts';
import { loomCamera } from './drawnLoom/camera.ts';

/** Ways a photograph gets worse, each from as it was (level 0 or its first level) to hopeless. */
export const DEGRADATIONS = {
  blur: { unit: 'px', levels: [0, 0.8, 1.5, 2.5, 4, 6, 9] },
  noise: { unit: 'of 255', levels: [0, 8, 16, 32, 50, 80] },
  jpeg: { unit: 'quality', levels: [90, 50, 30, 15, 8, 3] },
  tilt: { unit: '°', levels: [0, 8, 16, 24, 32, 42] },
  resolution: { unit: 'px long side', levels: [1500, 1100, 800, 600, 450, 320] },
  occlusion: { unit: '% covered', levels: [0, 4, 8, 16, 28, 45] },
} as const;
export type Degradation = keyof typeof DEGRADATIONS;

/**
 * The loom seen from further over: every pixel of the new camera is followed to the strings' plane and looked up in the
 * photograph through the renderer's own camera. What lies off that plane (the bars' depth, the table) moves with it.
 */
async function lean(stem: string, base: Buffer, degrees: number): Promise<Buffer> {
  const { data, info } = await sharp(base).raw().toBuffer({ resolveWithObject: true });
  const { width, height } = info;
  const whole = await sharp(`${stem}.jpg`).metadata();
  const source = trueLoomToPhoto(`${stem}.truth.json`, `${stem}.brief.json`, whole);
  const shrink = width / whole.width;
  const { loom } = JSON.parse(readFileSync(`${stem}.brief.json`, 'utf8')) as Brief;
  const { camera } = JSON.parse(readFileSync(`${stem}.truth.json`, 'utf8')) as {
    camera: { lens: number; pitch: number; yaw: number; roll: number };
  };
  const radians = Math.PI / 180;
  const over = loomCamera({
    width,
    height,
    loom: {
      openingWidth: loom.opening_width_mm,
      openingHeight: loom.opening_height_mm,
      bar: loom.bar_mm,
      sideBar: loom.bar_mm,
    },
    camera: {
      pitch: (camera.pitch + Math.sign(camera.pitch || 1) * degrees) * radians,
      yaw: camera.yaw * radians,
      roll: camera.roll * radians,
      focal: camera.lens / 36,
      fill: 0.9,
      targetX: 0,
      targetY: 0,
      k1: 0,
      k2: 0,
    },
  });
  const out = Buffer.alloc(data.length, 128);
  const ray = new Float64Array(4);
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      over.ray(column + 0.5, row + 0.5, ray);
      const seen = source.map(ray[0]!, ray[1]!);
      const px = (seen.x + 0.5) * shrink - 0.5;
      const py = (seen.y + 0.5) * shrink - 0.5;
      const c = Math.floor(px);
      const r = Math.floor(py);
      if (!(c >= 0 && r >= 0 && c + 1 < width && r + 1 < height)) continue;
      const fx = px - c;
      const fy = py - r;
      for (let channel = 0; channel < 3; channel++) {
        const at = (r * width + c) * 3 + channel;
        const upper = data[at]! * (1 - fx) + data[at + 3]! * fx;
        const lower = data[at + width * 3]! * (1 - fx) + data[at + width * 3 + 3]! * fx;
        out[(row * width + column) * 3 + channel] = Math.round(upper * (1 - fy) + lower * fy);
      }
    }
  return sharp(out, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 92 })
    .toBuffer();
}

async function addNoise(bytes: Buffer, sigma: number, random: SeededRandom): Promise<Buffer> {
  const { data, info } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true });
  for (let at = 0; at < data.length; at++) {
    const bell = (random.unit() + random.unit() + random.unit() - 1.5) * 2;
    data[at] = Math.max(0, Math.min(255, Math.round(data[at]! + bell * sigma)));
  }
  return sharp(data, { raw: { width: info.width, height: info.height, channels: 3 } })
    .jpeg({ quality: 92 })
    .toBuffer();
}

/** Lays opaque patches, as of leaves or paper, until a share of the middle of the picture is covered. */
async function cover(bytes: Buffer, percent: number, random: SeededRandom): Promise<Buffer> {
  const { width, height } = await sharp(bytes).metadata();
  let patches = '';
  for (let covered = 0; covered < (percent / 100) * width * height * 0.6; ) {
    const rx = random.between(0.02, 0.07) * width;
    const ry = random.between(0.01, 0.05) * height;
    covered += Math.PI * rx * ry;
    const x = random.between(0.1, 0.9) * width;
    const y = random.between(0.12, 0.88) * height;
    patches += `<ellipse cx="${x}" cy="${y}" rx="${rx}" ry="${ry}" fill="${random.pick(['#6d7d52', '#d8cfc0', '#8a5a44', '#3f4750'])}" transform="rotate(${random.between(0, 180)} ${x} ${y})"/>`;
  }
  const sheet = Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">${patches}</svg>`,
  );
  return sharp(bytes)
    .composite([{ input: sheet }])
    .jpeg({ quality: 92 })
    .toBuffer();
}

/**
 * A rendered photograph made worse in one way. All start from the picture as displayed, 1500 px on its long side.
 * @param stem path of the photograph without `.jpg`; brief and truth lie beside it
 */
export async function degrade(stem: string, kind: Degradation, level: number, seed: number): Promise<Buffer> {
  const random = new SeededRandom(seed);
  const long = kind === 'resolution' ? level : 1500;
  const base = await sharp(`${stem}.jpg`)
    .rotate()
    .resize({ width: long, height: long, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 92 })
    .toBuffer();
  if (kind === 'jpeg') return sharp(base).jpeg({ quality: level }).toBuffer();
  if (kind === 'tilt') return lean(stem, base, level);
  if (level === 0 || kind === 'resolution') return base;
  if (kind === 'blur') return sharp(base).blur(level).jpeg({ quality: 92 }).toBuffer();
  if (kind === 'noise') return addNoise(base, level, random);
  return cover(base, level, random);
}
