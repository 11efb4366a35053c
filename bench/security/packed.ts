/**
 * Packs the program as `npm run package` does, takes the archive apart again and runs what was in it, away from every
 * other package, over the tests' stand-in for Electron's API. Where the Electron runtime isn't installed a stand-in
 * for its binary is packed, which has fuses but can't be started.
 *   npm run packed
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { projectRoot } from '../../tests/support/pieces.ts';
import { fusesOf, makeStandInRuntime } from '../../tests/support/standInRuntime.ts';
import { startStubbed } from '../../tests/support/stubbedElectron/startStubbed.ts';

const { findElectron } = (await import(pathToFileURL(join(projectRoot, 'scripts/lib.mjs')).href)) as {
  findElectron: () => string | null;
};
if (process.platform !== 'linux') throw new Error('This looks into a folder packed for Linux; run it there.');
const home = mkdtempSync(join(tmpdir(), 'plumbweft-packed-'));
const real = findElectron() !== null;
if (!real) makeStandInRuntime(join(home, 'runtime'), '101100111');
console.log(real ? 'Packing with the installed Electron.' : 'Packing with a stand-in: Electron is not installed here.');
const packer = join(projectRoot, 'scripts/packaging/package.mjs');
const packed = spawnSync(process.execPath, [packer, '--dir', ...(real ? [] : ['--runtime', join(home, 'runtime')])], {
  stdio: 'inherit',
});
if (packed.status !== 0) process.exit(1);

const folder = join(projectRoot, '.cache/packaging/packed/linux-unpacked');
console.log(`fuses in the packed binary: ${fusesOf(readFileSync(join(folder, 'plumbweft')))}`);
const asar = createRequire(join(projectRoot, 'scripts/packaging/packer/package.json'))('@electron/asar') as {
  extractAll: (archive: string, to: string) => void;
};
asar.extractAll(join(folder, 'resources/app.asar'), join(home, 'app'));

type Call = { readonly ok: boolean; readonly result: unknown; readonly tag?: string };
const main = startStubbed(join(home, 'home'), { PLUMBWEFT_BUNDLE: join(home, 'app/out') });
let failed = 0;
async function call(name: string, params: object): Promise<Call> {
  const answer = await main.ask<Call>('call', { name, params });
  if (!answer.ok) failed++;
  console.log(`${answer.ok ? 'ok' : '!!'} ${name}${answer.tag === undefined ? '' : `: ${answer.tag}`}`);
  return answer;
}
const page = await main.ask<{ status: number }>('fetch', { url: 'app://plumbweft/' });
if (page.status !== 200) failed++;
console.log(`${page.status === 200 ? 'ok' : '!!'} the page`);
const { key } = (await call('openSample', {})).result as { key: string };
const photos = (await call('listPhotos', { key })).result as readonly { readonly hash: string }[];
const hash = photos[0]!.hash;
await call('photoImage', { key, hash, size: 'thumbnail' });
await call('measurePhoto', { key, job: 'packed', name: 'x', hash, marks: null });
await call('makeSheet', { key, sheet: 'warping', paper: 'a4', check: null });
await call('letterOutlines', { text: 'Weft', face: 'heading', height: 20 });
main.stop();
rmSync(home, { recursive: true, force: true });
console.log(`the packed program, run from its archive: ${failed} of 7 failed`);
process.exitCode = failed === 0 ? 0 : 1;
