import { mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { exportPiece } from '../../src/main/exchange/exportPiece.ts';
import { keyOf } from '../../src/main/service/pieceLibrary.ts';
import { realStorePorts } from '../../src/main/service/realPorts.ts';
import { lanternFolder } from '../support/pieces.ts';
import { type Stubbed, startStubbed } from '../support/stubbedElectron/startStubbed.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

interface Heard {
  readonly sent: readonly { readonly kind: string; readonly key: string }[];
  readonly boxes: readonly { readonly message: string; readonly detail: string }[];
}
const heard = (main: Stubbed) => main.ask<Heard>('heard');
const opens = async (main: Stubbed, key: string) =>
  (await main.ask<{ ok: boolean }>('call', { name: 'openPiece', params: { key } })).ok;

/** A piece's folder, and the same packed as one file. */
async function somewhere() {
  const place = temporaryFolder();
  const folder = join(place, 'Her piece');
  await lanternFolder(folder);
  const parts: Uint8Array[] = [];
  for await (const part of exportPiece(realStorePorts(), folder, { keepPlaces: false })) parts.push(part);
  const packed = join(place, 'Evening lantern.plumbweft');
  writeFileSync(packed, Buffer.concat(parts));
  return { place, folder, packed };
}

test('a packed piece given at the start is brought in, and the page told once it can hear', async () => {
  const { packed } = await somewhere();
  const home = temporaryFolder();
  const main = startStubbed(home, {}, ['--some-flag', packed]);
  const { sent, boxes } = await heard(main);
  expect(boxes).toEqual([]);
  expect(readdirSync(join(home, 'pieces'))).toEqual(['Evening-lantern']);
  expect(sent).toEqual([{ kind: 'open-piece', key: keyOf(join(home, 'pieces/Evening-lantern')) }]);
  expect(await opens(main, sent[0]!.key)).toBe(true);
  main.stop();
});

test('a piece given to the running program is opened where it lies: by a second start, by its folder or piece.json', async () => {
  const { place, folder } = await somewhere();
  const home = temporaryFolder();
  const main = startStubbed(home, { STUB_PACKAGED: '1' }, []);
  // The stand-in's own script stands where a packed program has its first file; it is no piece, and that is said.
  expect((await heard(main)).boxes).toHaveLength(1);
  for (const give of [
    () => main.ask('start', { argv: ['plumbweft', '--flag', 'Her piece'], folder: place }),
    () => main.ask('openFile', { path: folder }),
    () => main.ask('openFile', { path: join(folder, 'piece.json') }),
  ]) {
    await give();
    expect(await heard(main)).toEqual({ sent: [{ kind: 'open-piece', key: keyOf(folder) }], boxes: [] });
  }
  expect(await opens(main, keyOf(folder))).toBe(true);
  main.stop();
}, 60_000);

test('what can’t be opened is said, and nothing is brought in', async () => {
  const place = temporaryFolder();
  const home = temporaryFolder();
  writeFileSync(join(place, 'letter.plumbweft'), 'a letter');
  mkdirSync(join(place, 'empty'));
  const main = startStubbed(home, {}, [join(place, 'letter.plumbweft')]);
  expect(await heard(main)).toMatchObject({ sent: [], boxes: [{ message: expect.stringMatching(/zip/) }] });
  for (const [path, message] of [
    [join(place, 'empty'), /no piece in this folder/],
    [join(place, 'nothing'), /nothing to open/],
  ] as const) {
    expect(await main.ask('openFile', { path })).toBe(true);
    expect(await heard(main)).toMatchObject({ sent: [], boxes: [{ message: expect.stringMatching(message) }] });
  }
  const { result } = await main.ask<{ result: object }>('call', { name: 'readSettings', params: {} });
  await main.ask('call', { name: 'writeSettings', params: { ...result, language: 'de' } });
  await main.ask('openFile', { path: join(place, 'nothing') });
  expect((await heard(main)).boxes).toEqual([
    expect.objectContaining({
      message: 'An dieser Stelle gibt es nichts zu öffnen.',
      detail: 'Ein Stück aus der Liste wählen.',
    }),
  ]);
  main.stop();
});
