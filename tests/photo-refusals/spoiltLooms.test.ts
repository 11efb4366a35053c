import { join } from 'node:path';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { decodePhoto } from '../../bench/decodePhoto.ts';
import { lengthsTold } from '../../bench/lengthsTold.ts';
import { measure, pieceOf } from '../../bench/measuring.ts';
import { wrongFigures } from '../../bench/wrongPhotograph.ts';
import { spoiltLooms } from '../../scripts/pictures/spoiltLooms.ts';

const LABELS = [
  'top-bar-cut',
  'right-half-gone',
  'pitch-x0.5',
  'pitch-x1.1',
  'ends+4',
  'first+3',
  'opening-width-x1.15',
];
const looms = spoiltLooms([join(import.meta.dirname, '../fixtures/photos/dev01')], []).filter((loom) =>
  LABELS.some((label) => loom.name.endsWith(label)),
);

test('every way to spoil a loom is there', () => {
  expect(looms.length).toBe(LABELS.length);
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
