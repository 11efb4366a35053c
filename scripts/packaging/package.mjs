// Packs the program for this computer, with its fuses set, and reads them back from what was packed.
//   npm run package [-- --dir] [-- --runtime FOLDER]
// `--dir` stops at the unpacked folder, without an installer. The Electron runtime is the one given, else the one that
// is installed, else the packer fetches it.
import { existsSync, mkdirSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import sharp from 'sharp';
import { findElectron, root, run } from '../lib.mjs';
import { packing } from './config.mjs';
import { readFuses } from './fuses.mjs';

const { values } = parseArgs({ options: { dir: { type: 'boolean', default: false }, runtime: { type: 'string' } } });
// The packer has a folder of its own, so that nobody who doesn't pack has to install it.
const packer = join(import.meta.dirname, 'packer');
if (!existsSync(join(packer, 'node_modules')) && run('npm', ['ci', '--no-audit', '--no-fund'], { cwd: packer }) !== 0) {
  console.error('The packer could not be installed. Look at the lines above.');
  process.exit(1);
}
const { build } = createRequire(join(packer, 'package.json'))('electron-builder');

const work = join(root, '.cache/packaging');
mkdirSync(work, { recursive: true });
const icon = sharp(join(root, 'src/renderer/icon.svg'), { density: 2304 }).resize(1024, 1024).png();
writeFileSync(join(work, 'icon.png'), await icon.toBuffer());

const installed = findElectron();
// On macOS the program file lies three folders down in `Electron.app`.
const folderOf = (program) => dirname(process.platform === 'darwin' ? resolve(program, '../../..') : program);
const runtime =
  values.runtime !== undefined ? resolve(values.runtime) : installed === null ? null : folderOf(installed);

const packed = [];
const config = packing(runtime, work, (executable) => packed.push(executable));
await build({ projectDir: root, config, ...(values.dir ? { dir: true } : {}) });

let wrong = 0;
for (const executable of packed) {
  const found = await readFuses(executable);
  for (const { name, is } of found) console.log(`  ${name.padEnd(40)} ${is ? 'on' : 'off'}`);
  const amiss = found.filter(({ is, should }) => is !== should || should === null);
  wrong += amiss.length;
  console.log(`${relative(root, executable)}: ${found.length - amiss.length} of ${found.length} fuses as decided`);
  const resources = join(dirname(executable), 'resources');
  if (existsSync(join(resources, 'app.asar'))) {
    const size = statSync(join(resources, 'app.asar')).size;
    console.log(`  app.asar ${(size / 1e6).toFixed(1)} MB, beside it: ${readdirSync(resources).join(', ')}`);
  }
}
process.exitCode = packed.length > 0 && wrong === 0 ? 0 : 1;
