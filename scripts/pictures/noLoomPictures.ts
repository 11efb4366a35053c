import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { SeededRandom } from '../../tests/virtual-weaver/seededRandom.ts';
import type { Ground } from './drawnLoom/scene.ts';
import * as papers from './noLoom/papers.ts';
import { develop, type Sheet, tint } from './noLoom/sketch.ts';
import { emptyTable, noisePicture } from './noLoom/tables.ts';
import * as things from './noLoom/things.ts';

/** A picture with no loom in it. `make` gives the same JPEG every time. */
export interface NoLoomPicture {
  readonly name: string;
  readonly kind: string;
  readonly make: () => Promise<Buffer>;
}

const DRAWERS: Readonly<Record<string, (sheet: Sheet) => string>> = { ...papers, ...things };
const TABLES: readonly Ground['kind'][] = [
  'plain',
  'planks',
  'stripes',
  'checks',
  'tiles',
  'carpet',
  'speckle',
  'parquet',
  'cloth',
  'dots',
];

function seedOf(text: string): number {
  let seed = 7;
  for (const letter of text) seed = (Math.imul(seed, 31) + letter.charCodeAt(0)) >>> 0;
  return seed % 1_000_000;
}

function drawn(kind: string, draw: (sheet: Sheet) => string, index: number): NoLoomPicture {
  const name = `${kind}-${index}`;
  return {
    name,
    kind,
    make: () => {
      const random = new SeededRandom(seedOf(name));
      const long = random.pick([1200, 1500, 1800]);
      const upright = random.chance(0.6);
      const sheet = { width: upright ? long * 0.75 : long, height: upright ? long : long * 0.75, random };
      const body = draw(sheet);
      // Mostly as one holds a camera, some turned by a quarter, some by any angle.
      const turn = random.pick([0, 0, Math.PI / 2, random.between(0, Math.PI)]) + random.between(-0.06, 0.06);
      return develop(sheet, body, tint(random, 0.15, 0.9), turn);
    },
  };
}

/** Crops of photographs and chessboards under an open licence that hold no notched loom. */
function cropped(file: string, name: string, index: number): NoLoomPicture {
  return {
    name: `${name}-${index}`,
    kind: name,
    make: async () => {
      const random = new SeededRandom(seedOf(`${name}-${index}`));
      const whole = index === 0 ? 1 : random.between(0.4, 0.9);
      const upright = sharp(await sharp(file).rotate().toBuffer());
      const { width, height } = await upright.metadata();
      const w = Math.floor(width * whole);
      const h = Math.floor(height * whole);
      const left = random.whole(0, width - w);
      const top = random.whole(0, height - h);
      const piece = await upright.extract({ left, top, width: w, height: h }).toBuffer();
      const turned = random.pick([0, 0, 90, 180, random.between(-40, 40)]);
      return sharp(piece)
        .rotate(turned, { background: '#808080' })
        .toColourspace('srgb')
        .jpeg({ quality: 90 })
        .toBuffer();
    },
  };
}

/**
 * Every picture without a loom: drawn ones in the same number of each kind, then crops of the photographs in `real`.
 * @param each how many of every drawn kind
 */
export function noLoomPictures(real: string, each = 9): NoLoomPicture[] {
  const pictures: NoLoomPicture[] = [];
  for (let index = 0; index < each; index++) {
    for (const [kind, draw] of Object.entries(DRAWERS)) pictures.push(drawn(kind, draw, index));
    if (index < 5)
      for (const table of TABLES) {
        const name = `table-${table}-${index}`;
        pictures.push({
          name,
          kind: 'table',
          make: () => {
            const random = new SeededRandom(seedOf(name));
            return emptyTable(table, random.pick([900, 1200]), random.pick([900, 1200]), random);
          },
        });
      }
    const name = `noise-${index}`;
    pictures.push({ name, kind: 'noise', make: () => noisePicture(900, 1200, new SeededRandom(seedOf(name))) });
  }
  const boards = join(real, 'chessboards');
  for (const file of readdirSync(boards).filter((entry) => entry.endsWith('.jpg')))
    for (let index = 0; index < 3; index++)
      pictures.push(cropped(join(boards, file), `board-${file.replace('.jpg', '')}`, index));
  for (const file of readdirSync(real).filter((entry) => entry.endsWith('.jpeg')))
    for (let index = 0; index < 10; index++)
      pictures.push(cropped(join(real, file), `real-${file.replace('.jpeg', '')}`, index));
  return pictures;
}
