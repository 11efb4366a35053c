import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { decodePhoto } from '../../bench/decodePhoto.ts';
import { measure, pieceOf } from '../../bench/measuring.ts';
import { type NoLoomPicture, noLoomPictures } from '../../scripts/pictures/noLoomPictures.ts';
import type { Brief } from '../../src/core/project/brief.ts';

const fixtures = join(import.meta.dirname, '../fixtures');
const briefs = readdirSync(join(fixtures, 'photos'))
  .filter((file) => file.endsWith('.brief.json'))
  .map((file) => JSON.parse(readFileSync(join(fixtures, 'photos', file), 'utf8')) as Brief);

/** One picture of every kind, and four empty tables, of the bench's hundreds; shrunk to keep the test short. */
function chosen(): NoLoomPicture[] {
  const room = new Map<string, number>([['table', 4]]);
  return noLoomPictures(join(fixtures, 'real'), 1).filter(({ kind }) => {
    const left = /^board-left0[2-5]$|^calendar$|^crossing$/.test(kind) ? 0 : (room.get(kind) ?? 1);
    room.set(kind, left - 1);
    return left > 0;
  });
}

const pictures = chosen();

test('there are 34 pictures without a loom', () => {
  expect(pictures.length).toBe(34);
});

test.each(pictures.map((picture, index) => [picture.name, picture, index] as const))(
  '%s is not measured, and is turned away in words',
  async (_name, picture, index) => {
    const small = await sharp(await picture.make())
      .resize({ width: 640, height: 640, fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality: 90 })
      .toBuffer();
    const reading = measure(await decodePhoto(small), pieceOf(briefs[index % briefs.length]!));
    expect(reading.status).not.toBe('measured');
    expect(reading.reasons.length).toBeGreaterThan(0);
    for (const reason of reading.reasons) {
      for (const message of Object.values(reason.message)) expect(message).toMatch(/\.$/);
      expect(reason.remedy).toMatch(/\.$/);
    }
    expect(reading.selvedge).toEqual([]);
    expect(reading.ends.every((end) => end.fell === null)).toBe(true);
  },
);
