import { expect, test } from 'vitest';
import { decodePhoto } from '../../bench/decodePhoto.ts';
import { measure, pieceOf } from '../../bench/measuring.ts';
import { wrongFigures } from '../../bench/wrongPhotograph.ts';
import { randomScene } from '../../scripts/pictures/drawnLoom/randomScene.ts';
import type { LoomScene } from '../../scripts/pictures/drawnLoom/scene.ts';
import { drawnLoom } from '../../scripts/pictures/drawnLoom.ts';
import type { PhotoTruth } from '../../scripts/pictures/spoiltLooms.ts';
import { parseBrief } from '../../src/core/project/brief.ts';

/** A drawn loom whose scene has one thing that once led the check astray, its reading and its truth. */
async function readingOf(seed: number, change: (scene: LoomScene) => LoomScene = (scene) => scene) {
  const { jpeg, brief, truth } = await drawnLoom(change(randomScene(`seed ${seed}`, seed)));
  const parsed = parseBrief(JSON.parse(JSON.stringify(brief)));
  if (!parsed.ok) throw new Error(parsed.problem.sentence);
  const reading = measure(await decodePhoto(jpeg), pieceOf(parsed.value));
  return { reading, truth: truth as PhotoTruth };
}
const LONG = { timeout: 120_000 };

test('where a shade ends behind the strings isn’t the fell', LONG, async () => {
  const { reading, truth } = await readingOf(9137);
  expect(reading.status).toBe('measured');
  expect(wrongFigures(reading, truth)).toEqual([]);
});

test(
  'no selvedge is read beside a ruler that hides the outer ends, above where cloth is still seen',
  LONG,
  async () => {
    const { reading, truth } = await readingOf(9106);
    expect(reading.status).toBe('measured');
    expect(wrongFigures(reading, truth)).toEqual([]);
    const seen = reading.ends.filter(({ fell }) => fell !== null).at(-1)!;
    const highest = Math.max(...reading.selvedge.flatMap((row) => (row.right ? [row.y] : [])));
    expect(highest).toBeLessThan(seen.fell!.value);
  },
);

test('shadows of the neighbours in an empty notch’s place aren’t its string', LONG, async () => {
  const { reading } = await readingOf(9237, (scene) => {
    expect(scene.warp.missing).toEqual([2]);
    return scene;
  });
  expect(reading.endsCounted).toBe(reading.ends.length - 1);
  expect(reading.flags.filter((flag) => flag.kind === 'count').map((flag) => flag.ends)).toEqual([[2]]);
});

test('strings that a hand hides at the top bar are counted at the bottom bar', LONG, async () => {
  const { reading, truth } = await readingOf(9230);
  expect(reading.status).toBe('measured');
  expect(reading.endsCounted).toBe(truth.ends.length);
  expect(wrongFigures(reading, truth)).toEqual([]);
});

test('where it may hide outer strings, it is named', LONG, async () => {
  const { reading } = await readingOf(9124);
  expect(reading.status).toBe('needs-reference');
  expect(reading.reasons[0]!.message.mm).toContain('3 outer ends');
});

test('a warp on which nothing is woven is counted, and its cloth said to be missing', LONG, async () => {
  const { reading, truth } = await readingOf(9105, (scene) => ({
    ...scene,
    things: [],
    cloth: { ...scene.cloth, passes: scene.cloth.passes.map(() => 0), tails: 0 },
  }));
  expect(reading.status).toBe('measured');
  expect(reading.endsCounted).toBe(truth.ends.length);
  expect(reading.ends.filter((end) => end.fell !== null)).toEqual([]);
  expect(reading.reasons.map((reason) => reason.code)).toEqual(['nothing-woven']);
});

test(
  'the edge of cloth that spreads far is looked for beside its outer string, though that end’s fell isn’t seen',
  LONG,
  async () => {
    const { reading, truth } = await readingOf(9120, (scene) => {
      const { height, pass, passes } = scene.cloth;
      const high = Math.round((0.9 * height) / pass);
      const drawInRight = [
        [0, 0],
        [0.55 * height, 0],
        [0.75 * height, -12],
        [height, -13],
      ] as const;
      return {
        ...scene,
        things: [],
        cloth: { ...scene.cloth, spread: null, passes: passes.map(() => high), drawInRight },
      };
    });
    expect(reading.status).toBe('measured');
    expect(reading.selvedge.filter((row) => row.right).length).toBeGreaterThan(40);
    expect(wrongFigures(reading, truth).filter(({ kind }) => kind === 'selvedge')).toEqual([]);
  },
);
