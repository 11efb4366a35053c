import { copyFileSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { PREVIOUS_KEPT, previousRevisions } from '../../src/main/store/previousVersions.ts';
import { readPiece } from '../../src/main/store/readPiece.ts';
import { savePiece } from '../../src/main/store/savePiece.ts';
import { verifyPiece } from '../../src/main/store/verifyPiece.ts';
import { lanternFolder } from '../support/pieces.ts';
import { namedPiece, nothingAcknowledged, openForTest, owner, storeStep } from '../support/storeScript.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

const ports = realStorePorts();

/** A piece with three saves, two checks and their photographs. */
async function evening(): Promise<string> {
  const folder = join(temporaryFolder(), 'piece');
  await lanternFolder(folder);
  const opened = await openForTest(ports, folder);
  const acknowledged = nothingAcknowledged();
  for (const step of [0, 1, 2, 3, 4, 6, 8]) await storeStep(ports, opened, step, acknowledged);
  await opened.handle.lock?.release();
  return folder;
}
const look = async (folder: string, mend: boolean) => {
  const verified = await verifyPiece(ports, folder, owner, mend);
  if (!verified.ok) throw new Error(verified.problem.sentence);
  return verified.value.findings.filter(({ state }) => state !== 'whole').map(({ state, what }) => `${state}: ${what}`);
};
const first = (folder: string, place: string) => join(folder, place, readdirSync(join(folder, place)).sort()[0]!);

test('a piece that is whole is found whole, and looking changes nothing', async () => {
  const folder = await evening();
  const before = readdirSync(folder, { recursive: true }).sort();
  expect(await look(folder, false)).toEqual([]);
  expect(await look(folder, true)).toEqual([]);
  expect(readdirSync(folder, { recursive: true }).sort()).toEqual(before);
});

test('each thing that can break is found, mended where it can be, and said where it can’t', async () => {
  const cases: [(folder: string) => void, RegExp, RegExp | null][] = [
    [(folder) => writeFileSync(join(folder, 'piece.json'), '{'), /^mendable: piece\.json can't be used/, null],
    [(folder) => rmSync(join(folder, 'piece.json')), /^mendable: piece\.json can't be used/, null],
    [(folder) => writeFileSync(join(folder, 'progress.json'), ''), /^mendable: progress\.json can't be used/, null],
    [(folder) => writeFileSync(first(folder, 'previous'), 'x'), /^mendable: The kept version 1/, null],
    [
      (folder) => rmSync(join(folder, 'previous'), { recursive: true }),
      /^mendable: The current version .* no second copy/,
      null,
    ],
    [(folder) => writeFileSync(join(folder, 'photos/.x.1.part'), 'half'), /^mendable: A half-written file/, null],
    [
      (folder) => writeFileSync(first(folder, 'photos'), 'spoilt'),
      /^beyond-mending: Photograph .* is damaged/,
      /^beyond-mending: Check .* no whole photograph/,
    ],
    [(folder) => writeFileSync(first(folder, 'checks'), '{}'), /^beyond-mending: Check .* can't be used/, null],
    [
      (folder) => writeFileSync(join(folder, 'letter.txt'), 'x'),
      /^note: "letter\.txt" is not a file of the piece/,
      /^note: "letter/,
    ],
  ];
  for (const [spoil, found, afterwards] of cases) {
    const folder = await evening();
    spoil(folder);
    expect((await look(folder, false)).join('\n')).toMatch(new RegExp(found.source, 'm'));
    await look(folder, true);
    expect((await look(folder, false)).join('\n')).toMatch(
      afterwards === null ? /^$/ : new RegExp(afterwards.source, 'm'),
    );
    expect((await readPiece(ports, folder)).ok).toBe(true);
  }
});

test('mending brings back the newest version, and what could not be read is put aside, not thrown away', async () => {
  const folder = await evening();
  const path = join(folder, 'piece.json');
  const whole = readFileSync(path, 'utf8');
  writeFileSync(path, whole.slice(0, 500));
  await look(folder, true);
  expect(readFileSync(path, 'utf8')).toBe(whole);
  const aside = readdirSync(folder).find((name) => name.endsWith('.aside'));
  expect(readFileSync(join(folder, aside!), 'utf8')).toBe(whole.slice(0, 500));
});

test('with no version left to bring back it says so and changes nothing', async () => {
  const folder = await evening();
  rmSync(join(folder, 'previous'), { recursive: true });
  mkdirSync(join(folder, 'previous'));
  writeFileSync(join(folder, 'piece.json'), '{');
  expect(await look(folder, true)).toContainEqual(expect.stringMatching(/^beyond-mending: piece\.json/));
  expect(readFileSync(join(folder, 'piece.json'), 'utf8')).toBe('{');
});

test('a piece that is open in a running program is not mended', async () => {
  const folder = await evening();
  const opened = await openForTest(ports, folder);
  expect(await verifyPiece(ports, folder, owner, true)).toMatchObject({
    ok: false,
    problem: { tag: 'open-elsewhere' },
  });
  await opened.handle.lock?.release();
});

test('the newest versions are kept, and no more than that', async () => {
  const folder = await evening();
  const opened = await openForTest(ports, folder);
  let { revision } = opened;
  for (let count = 0; count < PREVIOUS_KEPT + 5; count++) {
    const saved = await savePiece(ports, opened.handle, revision, namedPiece(revision + 1));
    if (!saved.ok) throw new Error(saved.problem.sentence);
    revision = saved.value;
  }
  const kept = await previousRevisions(ports, folder);
  expect(kept).toHaveLength(PREVIOUS_KEPT);
  expect(kept[0]).toBe(revision);
  // The very same save once more, because its answer got lost, makes no further version.
  expect(await savePiece(ports, opened.handle, revision - 1, namedPiece(revision))).toMatchObject({
    ok: true,
    value: revision,
  });
  await opened.handle.lock?.release();
});

test('progress kept by the first version opens, and is kept in the new form at the next turn', async () => {
  const folder = await evening();
  copyFileSync(join(import.meta.dirname, '../fixtures/documents/progress-v1.json'), join(folder, 'progress.json'));
  const opened = await openForTest(ports, folder);
  expect(opened.progress).toEqual({ passesDone: 0, planFingerprint: '', finished: [], at: '2026-11-25T09:00:00.000Z' });
  expect(JSON.parse(readFileSync(join(folder, 'progress.json'), 'utf8'))).toMatchObject({ version: 1 });
  await storeStep(ports, opened, 1, nothingAcknowledged());
  expect(JSON.parse(readFileSync(join(folder, 'progress.json'), 'utf8'))).toMatchObject({ version: 3 });
  await opened.handle.lock?.release();
});
