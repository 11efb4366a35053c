// Runs everything that `npm test` means: types, lint, layers, unit tests, browser tests. Each kind runs whatever the
// ones before it said; the summary stands last and ends with one plain line.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { findChromium, root } from './lib.mjs';

const bin = (path) => join(root, 'node_modules', path);
const reports = join(root, '.cache/test');
rmSync(reports, { recursive: true, force: true });
mkdirSync(reports, { recursive: true });

const lines = [];
let passed = 0;
let failed = 0;

function tally(name, begun, counted) {
  passed += counted.passed;
  failed += counted.failed;
  const seconds = ((Date.now() - begun) / 1000).toFixed(0);
  lines.push(`${name.padEnd(24)} ${counted.passed} passed, ${counted.failed} failed (${seconds} s)`);
}

/** Runs one program; its words are shown as they come. */
function step(name, script, args, count, env = {}) {
  const begun = Date.now();
  console.log(`\n== ${name}`);
  const { status, error } = spawnSync(process.execPath, [script, ...args], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...env },
  });
  const code = error ? 1 : (status ?? 1);
  const counted = count();
  // A runner that fails without a failing test (a crash, a file that doesn't load) is a failure all the same.
  if (code !== 0 && counted.failed === 0) counted.failed = 1;
  tally(name, begun, counted);
}

const fromVitest = () => {
  const file = join(reports, 'vitest.json');
  if (!existsSync(file)) return { passed: 0, failed: 1 };
  const report = JSON.parse(readFileSync(file, 'utf8'));
  // A file that doesn't load holds no tests but fails its suite.
  const unloaded = report.testResults.filter((one) => one.status === 'failed' && one.assertionResults.length === 0);
  return { passed: report.numPassedTests, failed: report.numFailedTests + unloaded.length };
};
const fromPlaywright = () => {
  const file = join(reports, 'playwright.json');
  if (!existsSync(file)) return { passed: 0, failed: 1 };
  const { stats } = JSON.parse(readFileSync(file, 'utf8'));
  return { passed: stats.expected + stats.flaky, failed: stats.unexpected };
};

/** Programs that only say yes or no, two at a time; the words of each are shown once it ends. */
async function checks(list) {
  const waiting = [...list];
  const worker = async () => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      const [name, script, args] = next;
      const begun = Date.now();
      const said = [];
      const child = spawn(process.execPath, [script, ...args], { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] });
      child.stdout.on('data', (words) => said.push(words));
      child.stderr.on('data', (words) => said.push(words));
      const code = await new Promise((done) => {
        child.on('error', () => done(1));
        child.on('close', (status) => done(status ?? 1));
      });
      console.log(`\n== ${name}\n${Buffer.concat(said)}`);
      tally(name, begun, { passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1 });
    }
  };
  await Promise.all([worker(), worker()]);
}

await checks([
  ...['src/core', 'src/main', 'src/renderer', 'tests'].map((part) => [
    `types ${part}`,
    bin('typescript/bin/tsc'),
    ['-p', part],
  ]),
  ['lint', bin('@biomejs/biome/bin/biome'), ['check', '--error-on-warnings', '.']],
  ['layers', bin('dependency-cruiser/bin/dependency-cruise.mjs'), ['--config', '.dependency-cruiser.cjs', 'src']],
]);
step(
  'unit tests',
  bin('vitest/vitest.mjs'),
  ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${join(reports, 'vitest.json')}`],
  fromVitest,
);
if (existsSync(join(root, 'playwright.config.ts'))) {
  step('browser tests', bin('@playwright/test/cli.js'), ['test', '--reporter=list,json'], fromPlaywright, {
    PLAYWRIGHT_JSON_OUTPUT_NAME: join(reports, 'playwright.json'),
    PLUMBWEFT_CHROMIUM: (await findChromium()) ?? '',
  });
}

console.log(`\n${lines.join('\n')}`);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
