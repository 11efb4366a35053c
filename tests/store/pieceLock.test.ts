import { spawnSync } from 'node:child_process';
import { readdirSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { nodeFiles } from '../../src/main/files/nodeFiles.ts';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { openPieceFolder } from '../../src/main/store/pieceHandle.ts';
import { takeLock } from '../../src/main/store/pieceLock.ts';
import { savePiece } from '../../src/main/store/savePiece.ts';
import { thisProcess } from '../../src/main/store/thisProcess.ts';
import { failingFiles } from '../support/faultyFiles.ts';
import { lantern, lanternFolder } from '../support/pieces.ts';
import { owner } from '../support/storeScript.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

const ports = realStorePorts();

async function folderWith(note: object | string | null): Promise<string> {
  const folder = join(temporaryFolder(), 'piece');
  await lanternFolder(folder);
  if (note !== null) writeFileSync(join(folder, '.lock'), typeof note === 'string' ? note : JSON.stringify(note));
  return folder;
}
const stopped = () => spawnSync(process.execPath, ['-e', '']).pid;
const noteOf = (more: object) => ({ token: 'abc123', ...thisProcess('another'), ...more });

test('one program at a time: the second is told, and gets it when the first lets go', async () => {
  const folder = await folderWith(null);
  const first = await openPieceFolder(ports, folder, owner);
  const second = await openPieceFolder(ports, folder, owner);
  if (!first.ok || !second.ok) throw new Error('not opened');
  expect(first.value.readOnly).toBeNull();
  expect(second.value.readOnly).toMatch(/open in another Plumbweft on this computer/);
  expect(await savePiece(ports, second.value.handle, 1, lantern('Mine'))).toMatchObject({
    problem: { tag: 'read-only' },
  });
  await first.value.handle.lock?.release();
  const third = await openPieceFolder(ports, folder, owner);
  expect(third).toMatchObject({ ok: true, value: { readOnly: null } });
  if (third.ok) await third.value.handle.lock?.release();
  expect(readdirSync(folder).filter((name) => name.startsWith('.'))).toEqual([]);
});

test.each([
  ['whose program has ended', () => noteOf({ pid: stopped() })],
  ['whose number another program got', () => noteOf({ began: '1' })],
  ['from before the computer started anew', () => noteOf({ boot: 'another start' })],
])('a lock %s is let go by itself', async (_what, note) => {
  const folder = await folderWith(note());
  const opened = await openPieceFolder(ports, folder, owner);
  expect(opened).toMatchObject({ ok: true, value: { readOnly: null } });
  if (opened.ok) await opened.value.handle.lock?.release();
});

test("another machine's lock is kept while it beats, explained when it doesn't, taken only when asked", async () => {
  const folder = await folderWith(noteOf({ machine: `not-${hostname()}` }));
  expect(await openPieceFolder(ports, folder, owner)).toMatchObject({
    value: { readOnly: expect.stringMatching(/open in Plumbweft on not-/) },
  });
  const before = new Date(Date.now() - 25 * 60_000);
  utimesSync(join(folder, '.lock'), before, before);
  expect(await openPieceFolder(ports, folder, owner)).toMatchObject({
    value: { readOnly: expect.stringMatching(/left open on not-.*last heard of 25 minutes ago/) },
  });
  const taken = await openPieceFolder(ports, folder, owner, true);
  expect(taken).toMatchObject({ value: { readOnly: null } });
});

test('a lock file without words is respected for a moment, then let go', async () => {
  const folder = await folderWith('');
  expect(await openPieceFolder(ports, folder, owner)).toMatchObject({ value: { readOnly: expect.any(String) } });
  const before = new Date(Date.now() - 60_000);
  utimesSync(join(folder, '.lock'), before, before);
  expect(await openPieceFolder(ports, folder, owner)).toMatchObject({ value: { readOnly: null } });
});

test('whoever lost the lock writes nothing more', async () => {
  const folder = await folderWith(null);
  const first = await openPieceFolder(ports, folder, owner);
  if (!first.ok) throw new Error('not opened');
  writeFileSync(join(folder, '.lock'), JSON.stringify(noteOf({})));
  expect(await savePiece(ports, first.value.handle, 1, lantern('Mine'))).toMatchObject({
    problem: { tag: 'lock-lost' },
  });
  // Letting go must not take the other's lock away.
  await first.value.handle.lock?.release();
  expect(readdirSync(folder)).toContain('.lock');
});

test('of many who see the same dead lock, one gets it', async () => {
  for (let round = 0; round < 8; round++) {
    const folder = await folderWith(noteOf({ pid: stopped() }));
    const takers = await Promise.all(Array.from({ length: 8 }, () => takeLock(ports, folder, owner, false)));
    expect(takers.filter((one) => one.ok).length).toBe(1);
  }
});

test('a folder that can’t be written opens to be looked at, and says why', async () => {
  const folder = await folderWith(null);
  const files = failingFiles(nodeFiles, { at: 0, code: 'EROFS', andAfter: true });
  const opened = await openPieceFolder({ ...ports, files }, folder, owner);
  expect(opened).toMatchObject({ ok: true, value: { readOnly: expect.stringMatching(/can't be written to/) } });
  expect(readdirSync(folder).filter((name) => name.startsWith('.'))).toEqual([]);
});
