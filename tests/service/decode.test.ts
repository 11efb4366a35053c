import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import type { Photo } from '../../src/core/photo/raster.ts';
import { decodePhoto } from '../../src/main/decode/decodePhoto.ts';
import { displayJpeg } from '../../src/main/decode/displayJpeg.ts';
import { readImageHeader } from '../../src/main/decode/imageHeader.ts';
import { inspectPhoto } from '../../src/main/decode/inspectPhoto.ts';
import { photoLimits } from '../../src/main/decode/photoLimits.ts';
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
    const cameraOf = async (Model: string, LensModel: string) =>
      (
        await readPhotoMetadata(
          await sharp(quarters.rgb, quarters.raw)
            .withExif({ IFD0: { Make: 'Maker', Model }, IFD2: { LensModel } })
            .jpeg()
            .toBuffer(),
        )
      ).camera;
    expect(await cameraOf('One', 'One front camera 2.7 mm')).toBe('One front camera 2.7 mm');
    expect(await cameraOf('One', '18-55 mm')).toBe('Maker One, 18-55 mm');
    expect(await readPhotoMetadata(readFileSync(fixture('pictures/quarters.heic')))).toEqual({
      taken: null,
      camera: 'Maker One',
    });
    expect(await readPhotoMetadata(new Uint8Array(100))).toEqual({ taken: null, camera: null });
  });

  test('its focal length is told in diagonals of the picture, where the file tells a likely one', async () => {
    const withFocal = (mm: string) =>
      sharp(quarters.rgb, quarters.raw)
        .withExif({ IFD2: { FocalLengthIn35mmFilm: mm } })
        .jpeg()
        .toBuffer();
    expect((await decoded(await withFocal('77'))).focal).toBeCloseTo(77 / 43.27, 3);
    expect((await decoded(await withFocal('0'))).focal).toBeUndefined();
    expect((await decoded(await withFocal('65535'))).focal).toBeUndefined();
    expect((await decoded(await sharp(quarters.rgb, quarters.raw).jpeg().toBuffer())).focal).toBeUndefined();
  });
});

describe('the limits of a photograph are kept before anything decodes it', () => {
  /** A PNG that says it is so large, with nothing behind its head. */
  const saying = (width: number, height: number): Uint8Array => {
    const png = new Uint8Array(64);
    png.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]);
    const view = new DataView(png.buffer);
    view.setUint32(16, width);
    view.setUint32(20, height);
    return png;
  };
  const tagOf = (bytes: Uint8Array) => {
    const inspected = inspectPhoto(bytes);
    return inspected.ok ? 'ok' : inspected.problem.tag;
  };

  test('bytes', () => {
    const heavy = new Uint8Array(photoLimits.bytes + 1);
    heavy.set(saying(1000, 1000));
    expect(tagOf(heavy)).toBe('photo-too-large');
    expect(tagOf(heavy.subarray(0, photoLimits.bytes))).toBe('ok');
  });

  test('pixels', () => {
    expect(tagOf(saying(11_000, 10_000))).toBe('ok');
    expect(tagOf(saying(11_001, 10_000))).toBe('photo-too-large');
    expect(tagOf(saying(photoLimits.side + 1, 300))).toBe('photo-too-large');
    expect(tagOf(saying(0xffff_ffff, 0xffff_ffff))).toBe('photo-too-large');
    expect(tagOf(saying(100, 4_000))).toBe('photo-too-small');
    expect(tagOf(saying(0, 0))).toBe('photo-unreadable');
  });

  test('a HEIC whose head says less than what is in it is not decoded beyond the limit', async () => {
    const bytes = new Uint8Array(readFileSync(fixture('pictures/quarters.heic')));
    const at = Buffer.from(bytes).indexOf('ispe');
    const view = new DataView(bytes.buffer);
    for (const [width, height] of [
      [60_000, 60_000],
      [0xffff_ffff, 0xffff_ffff],
    ] as const) {
      view.setUint32(at + 8, width);
      view.setUint32(at + 12, height);
      const outcome = await decodePhoto(bytes);
      expect(outcome).toMatchObject({ ok: false, problem: { tag: 'photo-too-large' } });
    }
  });

  test('what is shown or printed of a photograph carries nothing of what it said', async () => {
    const bytes = await sharp(quarters.rgb, quarters.raw)
      .withExif({ IFD0: { Make: 'Maker' }, IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } })
      .jpeg()
      .toBuffer();
    const { jpeg } = await displayJpeg(await decoded(bytes), {});
    const { exif, xmp, iptc, icc } = await sharp(jpeg).metadata();
    expect([exif, xmp, iptc, icc]).toEqual([undefined, undefined, undefined, undefined]);
  });
});
