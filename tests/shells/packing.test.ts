import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, test } from 'vitest';
import { projectRoot } from '../support/pieces.ts';
import { fusesOf, standInBinary } from '../support/standInRuntime.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

interface PackingConfig {
  readonly asar: unknown;
  readonly fileAssociations: readonly { readonly ext: string }[];
  readonly afterPack: (context: object) => Promise<void>;
}
type Packing = (runtime: string | null, work: string, onPacked: (executable: string) => void) => PackingConfig;
const { packing } = (await import(pathToFileURL(join(projectRoot, 'scripts/packaging/config.mjs')).href)) as {
  packing: Packing;
};

/** Runs the step that comes between packing and signing, on a stand-in for the packed program. */
async function afterPack(binary: Uint8Array, electronPlatformName = 'linux'): Promise<string> {
  const appOutDir = temporaryFolder();
  const path = join(appOutDir, electronPlatformName === 'linux' ? 'plumbweft' : 'Plumbweft.exe');
  writeFileSync(path, binary);
  const packager = { executableName: 'plumbweft', appInfo: { productFilename: 'Plumbweft' } };
  const told: string[] = [];
  const config = packing(null, appOutDir, (executable) => told.push(executable));
  await config.afterPack({ appOutDir, electronPlatformName, arch: 1, packager });
  expect(told).toEqual([path]);
  return fusesOf(readFileSync(path));
}

describe('the fuses of the packed program', () => {
  // In the order they have in the binary. 1 is on.
  const expected = [
    ['the program is no plain Node', '0'],
    ['cookies are encrypted', '1'],
    ['NODE_OPTIONS does nothing', '0'],
    ['no debugger is let in', '0'],
    ['the archive is proved', '1'],
    ['only the archive is run', '1'],
    ['no snapshot of its own', '0'],
    ['file: gets nothing more', '0'],
    ['WebAssembly keeps its bounds by traps', '1'],
  ] as const;
  const whole = expected.map(([, state]) => state).join('');
  const opposite = whole.replace(/./g, (state) => (state === '0' ? '1' : '0'));

  test.each(expected.map(([what, state], index) => [what, state, index] as const))(
    '%s',
    async (_what, state, index) => {
      expect((await afterPack(standInBinary(opposite)))[index]).toBe(state);
    },
  );

  test('are set on Windows too, and where the youngest is not there yet', async () => {
    expect(await afterPack(standInBinary(opposite), 'win32')).toBe(whole);
    expect(await afterPack(standInBinary(opposite.slice(0, 8)))).toBe(whole.slice(0, 8));
  });

  test('stop the packing where one is lacking, where one is unknown, and where there are none', async () => {
    await expect(afterPack(standInBinary(opposite.slice(0, 7)))).rejects.toThrow(/GrantFileProtocolExtraPrivileges/);
    await expect(afterPack(standInBinary(`${opposite}1`))).rejects.toThrow(/10 fuses/);
    await expect(afterPack(Buffer.from('no fuses at all'))).rejects.toThrow(/sentinel/);
  });
});

test('the program is packed as one archive, and a packed piece opens with it', () => {
  const config = packing(null, temporaryFolder(), () => undefined);
  expect(config.asar).toBe(true);
  expect(config.fileAssociations.map(({ ext }) => ext)).toEqual(['plumbweft']);
});
