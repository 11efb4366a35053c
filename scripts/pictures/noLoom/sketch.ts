import sharp from 'sharp';
import type { SeededRandom } from '../../../tests/virtual-weaver/seededRandom.ts';
import { colourHex, hueColour } from '../colour.ts';

/** What a drawer of one kind of picture gets: a sheet in picture units, and a repeatable hand. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly random: SeededRandom;
}

export const box = (x: number, y: number, w: number, h: number, fill: string, more = ''): string =>
  `<rect x="${x.toFixed(2)}" y="${y.toFixed(2)}" width="${Math.max(0, w).toFixed(2)}" height="${Math.max(0, h).toFixed(2)}" fill="${fill}" ${more}/>`;

export const line = (x1: number, y1: number, x2: number, y2: number, stroke: string, width: number): string =>
  `<line x1="${x1.toFixed(2)}" y1="${y1.toFixed(2)}" x2="${x2.toFixed(2)}" y2="${y2.toFixed(2)}" stroke="${stroke}" stroke-width="${width.toFixed(2)}"/>`;

export const disc = (x: number, y: number, r: number, fill: string): string =>
  `<circle cx="${x.toFixed(2)}" cy="${y.toFixed(2)}" r="${r.toFixed(2)}" fill="${fill}"/>`;

/** A muted colour of any hue; `low`..`high` bound its lightness. */
export function tint(random: SeededRandom, low = 0.2, high = 0.85): string {
  return colourHex(hueColour(random.unit(), random.between(0.03, 0.5), random.between(low, high)));
}

/** A wood's colour, light or dark. */
export function timber(random: SeededRandom): string {
  return colourHex(hueColour(random.between(0.05, 0.11), random.between(0.2, 0.5), random.between(0.25, 0.75)));
}

/**
 * Shows a drawn sheet as a camera would: turned by `turn` radians and leaned, with blur, grain and JPEG.
 * @returns JPEG bytes.
 */
export async function develop(sheet: Sheet, body: string, ground: string, turn: number): Promise<Buffer> {
  const { width, height, random } = sheet;
  const shear = random.between(-0.08, 0.08);
  const size = random.between(0.85, 1.1);
  const degrees = (turn * 180) / Math.PI;
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">${box(0, 0, width, height, ground)}` +
    `<g transform="translate(${width / 2} ${height / 2}) rotate(${degrees.toFixed(2)}) skewX(${(shear * 57).toFixed(2)}) scale(${size.toFixed(3)}) translate(${-width / 2} ${-height / 2})">${body}</g></svg>`;
  const { data } = await sharp(Buffer.from(svg))
    .removeAlpha()
    .blur(random.between(0.4, 1.2))
    .raw()
    .toBuffer({ resolveWithObject: true });
  return grain(data, width, height, random);
}

/** Adds grain and a gentle fall of light across, and writes JPEG. */
export async function grain(data: Buffer, width: number, height: number, random: SeededRandom): Promise<Buffer> {
  const strength = random.pick([1, 3, 6]);
  const leanX = random.between(-0.25, 0.25);
  const leanY = random.between(-0.25, 0.25);
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const level = 1 + leanX * (column / width - 0.5) + leanY * (row / height - 0.5);
      for (let channel = 0; channel < 3; channel++) {
        const at = (row * width + column) * 3 + channel;
        const bell = random.unit() + random.unit() - 1;
        data[at] = Math.max(0, Math.min(255, Math.round(data[at]! * level + bell * 2 * strength)));
      }
    }
  return sharp(data, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: random.pick([75, 85, 92]) })
    .toBuffer();
}
