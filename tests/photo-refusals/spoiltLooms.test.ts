import { join } from 'node:path';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { decodePhoto } from '../../bench/decodePhoto.ts';
import { lengthsTold } from '../../bench/lengthsTold.ts';
import { measure, pieceOf } from '../../bench/measuring.ts';
import { wrongFigures } from '../../bench/wrongPhotograph.ts';
import { spoiltLooms } from '../../scripts/pictures/spoiltLooms.ts';

const NAMES = [
  'dev01-top-bar-cut',
  'dev01-right-half-gone',
  'dev01-pitch-x0.5',
  'dev01-pitch-x1.1',
  'dev01-ends+4',
  'dev01-first+3',
  // From aslant it looks like the planned opening through a long lens.
  'dev08-opening-one-bar-higher',
];
const photos = ['dev01', 'dev08'].map((name) => join(import.meta.dirname, '../fixtures/photos', name));
const looms = spoiltLooms(photos, []).filter((loom) => NAMES.includes(loom.name));

test('every way to spoil a loom is there', () => {
  expect(looms.length).toBe(NAMES.length);
});

test.each(looms.map((loom) => [loom.name, loom] as const))(
  '%s: nothing wrong is said, and the fault is named',
  async (_, loom) => {
    const small = await sharp(await loom.jpeg())
      .resize({ width: 1400, height: 1400, fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: 90 })
      .toBuffer();
    const reading = await measure(await decodePhoto(small), pieceOf(loom.brief));
    expect(wrongFigures(reading, loom.truth, loom.planShift, loom.endShift)).toEqual([]);
    const said: readonly string[] = [
      ...reading.reasons.map(({ code }) => code),
      ...reading.flags.map(({ kind }) => kind),
    ];
    expect(
      said.some((code) => loom.names.includes(code)),
      `said ${said.join(', ') || 'nothing'}`,
    ).toBe(true);
    expect(lengthsTold(reading, loom.figures), reading.reasons.map(({ message }) => message.mm).join(' ')).toBe(true);
  },
  180_000,
);
