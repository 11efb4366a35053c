// Gets everything ready for a command: `node scripts/setup.mjs start|test|command`.
// Plain Node without packages, because it runs in a bare clone. What it does, it says; for `command` it says it on
// standard error only, so that `--json` stays clean.
import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { findChromium, findElectron, findProgram, newestChange, onWindows, root, run } from './lib.mjs';

const purpose = process.argv[2];
if (!['start', 'test', 'command'].includes(purpose)) {
  console.error('Say what to get ready for: node scripts/setup.mjs start|test|command');
  process.exit(2);
}
// Standard output of whatever runs goes to standard error when the answer of a command must stay clean.
const stdio = purpose === 'command' ? ['ignore', 2, 2] : 'inherit';
const say = (words) => (purpose === 'command' ? console.error(words) : console.log(words));

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Plumbweft needs Node 20.19 or newer; this is ${process.versions.node}. Install a newer Node.`);
  process.exit(1);
}

/** Whether what is installed is what the lock names; npm keeps its own list of what it put there. */
function isInstalled() {
  try {
    const read = (path) => JSON.parse(readFileSync(join(root, path), 'utf8')).packages;
    const wanted = read('package-lock.json');
    const there = read('node_modules/.package-lock.json');
    return Object.entries(wanted).every(
      ([path, { version, optional, devOptional }]) =>
        path === '' || optional || devOptional || there[path]?.version === version,
    );
  } catch {
    return false;
  }
}

function install() {
  if (isInstalled()) return;
  const first = !existsSync(join(root, 'node_modules'));
  say(first ? 'Installing packages (npm ci) …' : 'The installed packages are not those of the lock: npm ci …');
  if (run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], { stdio }) !== 0) {
    console.error('npm ci did not finish. Look at the lines above; a network to the npm registry is needed once.');
    process.exit(1);
  }
}

/** What the built program is made from. */
const sources = ['src', 'electron.vite.config.ts', 'package-lock.json', 'tsconfig.json'].map((name) =>
  join(root, name),
);
const builtMark = join(root, 'out/.built');

function build() {
  const built = statSync(builtMark, { throwIfNoEntry: false });
  if (built !== undefined && built.mtimeMs >= newestChange(sources)) return;
  const begun = new Date();
  say('Building …');
  rmSync(builtMark, { force: true });
  const vite = join(root, 'node_modules/electron-vite/bin/electron-vite.js');
  const quiet = ['--logLevel', 'warn'];
  if (run(process.execPath, [vite, 'build', ...quiet], { stdio, shell: false }) !== 0) {
    console.error('The build did not finish. Look at the lines above.');
    process.exit(1);
  }
  mkdirSync(join(root, 'out'), { recursive: true });
  // Marked with the time the build began: a source changed meanwhile makes it stale.
  writeFileSync(builtMark, `${begun.toISOString()}\n`);
}

const DAY_MS = 24 * 60 * 60 * 1000;
const FETCH_SECONDS = 20;

/** Tries once a day to fetch the Electron runtime, and gives up after 20 seconds: the local host serves meanwhile. */
function fetchElectron() {
  if (findElectron() !== null || process.env.PLUMBWEFT_NO_FETCH === '1') return;
  const mark = join(root, '.cache/electron-fetch-tried');
  const tried = statSync(mark, { throwIfNoEntry: false });
  if (tried !== undefined && Date.now() - tried.mtimeMs < DAY_MS) return;
  const installer = join(root, 'node_modules/electron/install.js');
  if (!existsSync(installer)) return;
  mkdirSync(join(root, '.cache'), { recursive: true });
  writeFileSync(mark, `${new Date().toISOString()}\n`);
  say(`Fetching the Electron runtime, for at most ${FETCH_SECONDS} seconds …`);
  const code = run(process.execPath, [installer], {
    stdio: 'ignore',
    shell: false,
    timeout: FETCH_SECONDS * 1000,
    killSignal: 'SIGKILL',
  });
  say(
    code === 0 && findElectron() !== null
      ? 'The Electron runtime is here.'
      : 'It could not be fetched; not tried again for a day.',
  );
}

async function haveChromium() {
  if ((await findChromium()) !== null) return;
  say("No Chromium found: trying Playwright's …");
  run(
    process.execPath,
    [join(root, 'node_modules/playwright/cli.js'), 'install', 'chromium-headless-shell', 'chromium'],
    {
      stdio,
      shell: false,
      timeout: 180_000,
    },
  );
  if ((await findChromium()) !== null) return;
  const isRoot = process.getuid?.() === 0;
  if (!onWindows && isRoot && findProgram('apt-get') !== null) {
    say("Playwright's could not be fetched: installing Debian's chromium with apt …");
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    run('apt-get', ['update', '-qq'], { stdio, env });
    run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], { stdio, env });
  }
  if ((await findChromium()) === null) {
    console.error('There is no Chromium for the browser tests. Install one, or set PLUMBWEFT_CHROMIUM to its path.');
    process.exit(1);
  }
}

install();
build();
if (purpose === 'start') fetchElectron();
if (purpose === 'test') await haveChromium();
