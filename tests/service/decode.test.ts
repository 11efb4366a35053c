import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import type { Photo } from '../../src/core/photo/raster.ts';
import { decodePhoto } from '../../src/main/decode/decodePhoto.ts';
import { readImageHeader } from '../../src/main/decode/imageHeader.ts';
import { readPhotoMetadata } from '../../src/main/decode/photoMetadata.ts';
import { fixture } from '../support/pieces.ts';
import { quarters } from '../support/quarters.ts';

async function decoded(bytes: Uint8Array): Promise<Photo> {
  const outcome = await decodePhoto(bytes);
  if (!outcome.ok) throw new Error(outcome.problem.sentence);
  return outcome.value;
}

/** The letter of the quarter each corner lies in, clockwise from the top left. */
function corners({ width, height, rgb }: Photo): string {
  const at = (x: number, y: number) => {
    const from = (y * width + x) * 3;
    const [r, g, b] = [rgb[from]!, rgb[from + 1]!, rgb[from + 2]!];
    return r > 180 && g > 180 ? 'w' : r > g && r > b ? 'r' : g > b ? 'g' : 'b';
  };
  return at(20, 20) + at(width - 20, 20) + at(width - 20, height - 20) + at(20, height - 20);
}

describe('a photograph is decoded as it is displayed', () => {
  // What EXIF 2.32 says each turn means, applied to red green / white blue read clockwise.
  const turns: Record<number, string> = {
    1: 'rgwb',
    2: 'grbw',
    3: 'wbrg',
    4: 'bwgr',
    5: 'rbwg',
    6: 'brgw',
    7: 'wgrb',
    8: 'gwbr',
  };
  test.each(Object.entries(turns))('EXIF turn %s', async (turn, expected) => {
    const photo = await decoded(
      await sharp(quarters.rgb, quarters.raw)
        .withMetadata({ orientation: Number(turn) })
        .jpeg()
        .toBuffer(),
    );
    expect(corners(photo)).toBe(expected);
    expect([photo.width, photo.height]).toEqual(Number(turn) > 4 ? [240, 320] : [320, 240]);
  });

  test.each(['png', 'webp', 'avif'] as const)('%s', async (format) => {
    const bytes = await sharp(quarters.rgb, quarters.raw).toFormat(format).toBuffer();
    expect(readImageHeader(bytes)).toEqual({ ending: format, width: 320, height: 240 });
    expect(corners(await decoded(bytes))).toBe('rgwb');
  });

  test('HEIC, with its own turn and not the EXIF one on top', async () => {
    const plain = readFileSync(fixture('pictures/quarters.heic'));
    expect(readImageHeader(plain)).toEqual({ ending: 'heic', width: 320, height: 240 });
    expect(corners(await decoded(plain))).toBe('rgwb');
    expect(corners(await decoded(readFileSync(fixture('pictures/quarters-turned.heic'))))).toBe('brgw');
  });

  test('grey, 16-bit and see-through pictures become three bytes a pixel', async () => {
    const grey = await decoded(await sharp(quarters.rgb, quarters.raw).greyscale().jpeg().toBuffer());
    expect(grey.rgb.length).toBe(320 * 240 * 3);
    expect(grey.rgb[0]).toBe(grey.rgb[1]);
    const deep = await decoded(await sharp(quarters.rgb, quarters.raw).toColourspace('rgb16').png().toBuffer());
    expect(corners(deep)).toBe('rgwb');
    const clear = await decoded(await sharp(quarters.rgb, quarters.raw).ensureAlpha(0).png().toBuffer());
    expect(corners(clear)).toBe('wwww');
  });

  test('its date and its device are read, its place is not', async () => {
    expect(
      await readPhotoMetadata(
        await sharp(quarters.rgb, quarters.raw)
          .withExif({ IFD0: { Make: 'Maker', Model: 'Maker One' } })
          .jpeg()
          .toBuffer(),
      ),
    ).toEqual({
      taken: null,
      camera: 'Maker One',
    });
    expect(await readPhotoMetadata(readFileSync(fixture('pictures/quarters.heic')))).toEqual({
      taken: null,
      camera: 'Maker One',
    });
    expect(await readPhotoMetadata(new Uint8Array(100))).toEqual({ taken: null, camera: null });
  });
});
