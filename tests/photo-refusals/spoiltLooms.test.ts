import { join } from 'node:path';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { decodePhoto } from '../../bench/decodePhoto.ts';
import { measure, pieceOf } from '../../bench/measuring.ts';
import { wrongFigures } from '../../bench/wrongPhotograph.ts';
import { spoiltLooms } from '../../scripts/pictures/spoiltLooms.ts';

const LABELS = ['top-bar-cut', 'right-half-gone', 'pitch-x1.1', 'ends+4', 'first+3', 'opening-x0.85'];
const looms = spoiltLooms([join(import.meta.dirname, '../fixtures/photos/dev01')], []).filter((loom) =>
  LABELS.some((label) => loom.name.endsWith(label)),
);

test('every way to spoil a loom is there', () => {
  expect(looms.length).toBe(LABELS.length);
});

const readingOf = async (loom: (typeof looms)[number]) => {
  const small = await sharp(await loom.jpeg())
    .resize({ width: 1100, height: 1100, fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 90 })
    .toBuffer();
  return measure(await decodePhoto(small), pieceOf(loom.brief));
};

test.each(looms.map((loom) => [loom.name, loom] as const))('%s: nothing wrong is said', async (_name, loom) => {
  expect(wrongFigures(await readingOf(loom), loom.truth, loom.planShift, loom.endShift)).toEqual([]);
});

/**
 * Not reached yet: these are turned away, but the reason given is only that no loom is seen. Each of these tests fails
 * as soon as the fault is named, and then moves up among the kept ones.
 */
const notNamedYet = ['top-bar-cut', 'right-half-gone', 'pitch-x1.1', 'ends+4', 'opening-x0.85'];
for (const loom of looms) {
  const short = notNamedYet.some((label) => loom.name.endsWith(label));
  (short ? test.fails : test)(`${loom.name}: the fault is named`, async () => {
    const reading = await readingOf(loom);
    const said: readonly string[] = [
      ...reading.reasons.map(({ code }) => code),
      ...reading.flags.map(({ kind }) => kind),
    ];
    expect(
      said.some((code) => loom.names.includes(code)),
      `said ${said.join(', ') || 'nothing'}`,
    ).toBe(true);
  });
}
