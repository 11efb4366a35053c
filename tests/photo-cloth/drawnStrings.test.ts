import { expect, test } from 'vitest';
import { decodePhoto } from '../../bench/decodePhoto.ts';
import { measure, pieceOf } from '../../bench/measuring.ts';
import { namedStrings } from '../../bench/namedStrings.ts';
import { randomScene } from '../../scripts/pictures/drawnLoom/randomScene.ts';
import type { LoomScene } from '../../scripts/pictures/drawnLoom/scene.ts';
import { drawnLoom } from '../../scripts/pictures/drawnLoom.ts';
import { parseBrief } from '../../src/core/project/brief.ts';

/** A drawn loom with one string slack and two that changed places, and its reading. */
async function readingOf(warp: Partial<LoomScene['warp']>) {
  const scene = randomScene('strings', 104);
  const { jpeg, brief, truth } = await drawnLoom({
    ...scene,
    width: Math.round(scene.width * 0.75),
    height: Math.round(scene.height * 0.75),
    things: [],
    warp: { ...scene.warp, missing: [], slack: [], ...warp },
  });
  const parsed = parseBrief(JSON.parse(JSON.stringify(brief)));
  if (!parsed.ok) throw new Error(parsed.problem.sentence);
  return { reading: measure(await decodePhoto(jpeg), pieceOf(parsed.value)), truth };
}

test('a slack string and two that cross are named by number, and their bows read', { timeout: 120_000 }, async () => {
  const { reading, truth } = await readingOf({ slack: [{ end: 4, bow: -2 }], swapped: [12] });
  expect(reading.status).toBe('measured');
  expect(namedStrings(reading.flags)).toEqual({ slack: [4], crossed: [12, 13] });
  const drawn = truth.ends[4]!.bow_mm;
  const read = reading.ends[4]!.bow!;
  expect(Math.abs(read.value - drawn)).toBeLessThan(2 * read.sigma);
  expect(read.sigma).toBeLessThan(0.3);
});

test('strings that hang straight are not called anything', { timeout: 120_000 }, async () => {
  const { reading, truth } = await readingOf({});
  expect(reading.status).toBe('measured');
  expect(namedStrings(reading.flags)).toEqual({ slack: [], crossed: [] });
  const bows = reading.ends.flatMap((end) => (end.bow ? [{ bow: end.bow, drawn: truth.ends[end.index]!.bow_mm }] : []));
  expect(bows.length).toBeGreaterThan(0.9 * reading.ends.length);
  const within = bows.filter(({ bow, drawn }) => Math.abs(bow.value - drawn) < 2 * bow.sigma);
  expect(within.length).toBeGreaterThan(0.9 * bows.length);
});
