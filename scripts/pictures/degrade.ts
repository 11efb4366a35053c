import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import type { Brief } from '../../src/core/project/brief.ts';
import { SeededRandom } from '../../tests/virtual-weaver/seededRandom.ts';
import { randomScene } from './drawnLoom/randomScene.ts';
import { drawnLoom } from './drawnLoom.ts';
import type { PhotoTruth } from './spoiltLooms.ts';

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

/** A photograph made worse in one way, with what belongs to it. */
export interface WorsePhotograph {
  readonly jpeg: Buffer;
  readonly brief: Brief;
  readonly truth: PhotoTruth;
}

/**
 * The loom of a drawn scene seen from further over. A photograph that has been taken can't be leaned afterwards: bars,
 * strings and table lie at different depths.
 */
async function leaned(seed: number, degrees: number): Promise<WorsePhotograph> {
  const scene = randomScene(`lean ${seed}`, seed);
  const pitch = ((Math.sign(scene.camera.pitch) || 1) * degrees * Math.PI) / 180;
  const { jpeg, brief, truth } = await drawnLoom({
    ...scene,
    things: [],
    camera: { ...scene.camera, pitch, fill: Math.min(0.85, scene.camera.fill), targetX: 0, targetY: 0 },
  });
  return { jpeg, brief: JSON.parse(JSON.stringify(brief)) as Brief, truth: truth as PhotoTruth };
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
 * A photograph made worse in one way. All but the leaned ones start from a rendered picture as displayed, 1500 px on its
 * long side.
 * @param stem path of the rendered photograph without `.jpg`; brief and truth lie beside it
 */
export async function degrade(stem: string, kind: Degradation, level: number, seed: number): Promise<WorsePhotograph> {
  if (kind === 'tilt') return leaned(seed, level);
  const read = (part: string): unknown => JSON.parse(readFileSync(`${stem}.${part}.json`, 'utf8'));
  const jpeg = await spoilt(stem, kind, level, new SeededRandom(seed));
  return { jpeg, brief: read('brief') as Brief, truth: read('truth') as PhotoTruth };
}

async function spoilt(stem: string, kind: Degradation, level: number, random: SeededRandom): Promise<Buffer> {
  const long = kind === 'resolution' ? level : 1500;
  const base = await sharp(`${stem}.jpg`)
    .rotate()
    .resize({ width: long, height: long, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 92 })
    .toBuffer();
  if (kind === 'jpeg') return sharp(base).jpeg({ quality: level }).toBuffer();
  if (level === 0 || kind === 'resolution') return base;
  if (kind === 'blur') return sharp(base).blur(level).jpeg({ quality: 92 }).toBuffer();
  if (kind === 'noise') return addNoise(base, level, random);
  return cover(base, level, random);
}
