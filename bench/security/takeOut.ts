/**
 * Takes every security rule out in turn, in a copy of the source, and runs the tests that speak of it: each must fail.
 *   npm run -s rules [-- --only WORD] [--side-by-side 2]
 */
import { spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { projectRoot } from '../../tests/support/pieces.ts';
import { type Rule, rules } from './rules.ts';

const { values } = parseArgs({
  options: { only: { type: 'string' }, 'side-by-side': { type: 'string', default: '2' } },
});
const begun = performance.now();

/** A copy of what the tests need, with the installed packages lent to it. */
function workshop(): string {
  const root = mkdtempSync(join(tmpdir(), 'plumbweft-rules-'));
  for (const name of [
    'src',
    'package.json',
    'tsconfig.json',
    'vitest.config.ts',
    'electron.vite.config.ts',
    'resources',
  ]) {
    cpSync(join(projectRoot, name), join(root, name), { recursive: true });
  }
  cpSync(join(projectRoot, 'scripts/packaging'), join(root, 'scripts/packaging'), {
    recursive: true,
    filter: (path) => !path.includes('node_modules'),
  });
  mkdirSync(join(root, 'tests'));
  for (const name of [
    'support',
    'shells',
    'import',
    'store',
    'service',
    'fixtures/sequence',
    'fixtures/pictures',
    'fixtures/documents',
  ]) {
    cpSync(join(projectRoot, 'tests', name), join(root, 'tests', name), { recursive: true });
  }
  // The rules lie in the main bundle; the page is only something to serve.
  rmSync(join(root, 'src/renderer'), { recursive: true });
  mkdirSync(join(root, 'src/renderer'));
  writeFileSync(
    join(root, 'src/renderer/index.html'),
    '<!doctype html><script type="module" src="./main.ts"></script>',
  );
  writeFileSync(join(root, 'src/renderer/main.ts'), 'document.title = "page";\n');
  symlinkSync(join(projectRoot, 'node_modules'), join(root, 'node_modules'));
  return root;
}

const run = (root: string, script: string, args: readonly string[]) =>
  new Promise<number>((resolve) => {
    const child = spawn(process.execPath, [join(projectRoot, 'node_modules', script), ...args], {
      cwd: root,
      stdio: 'ignore',
    });
    child.on('close', (code) => resolve(code ?? 1));
  });

/** Builds the main bundle when the test looks at the built one, then runs the test. */
async function testPasses(root: string, rule: Pick<Rule, 'test'>): Promise<boolean | 'not built'> {
  if (
    /electronMain|lastResort/.test(rule.test) &&
    (await run(root, 'electron-vite/bin/electron-vite.js', ['build', '--logLevel', 'error'])) !== 0
  ) {
    return 'not built';
  }
  return (await run(root, 'vitest/vitest.mjs', ['run', '--bail=1', rule.test])) === 0;
}

const chosen = rules.filter(({ name }) => values.only === undefined || name.includes(values.only));
const waiting = [...chosen];
const unseen: string[] = [];
let seen = 0;

async function bench(root: string): Promise<void> {
  for (let rule = waiting.shift(); rule !== undefined; rule = waiting.shift()) {
    const path = join(root, rule.file);
    const source = readFileSync(path, 'utf8');
    if (source.split(rule.from).length !== 2) {
      unseen.push(rule.name);
      console.log(`?  ${rule.name}: its text does not stand once in ${rule.file}`);
      continue;
    }
    writeFileSync(path, source.replace(rule.from, rule.to));
    const passes = await testPasses(root, rule);
    writeFileSync(path, source);
    if (passes === false) {
      seen++;
      console.log(`ok ${rule.name}: taken out, ${rule.test} fails`);
    } else {
      unseen.push(rule.name);
      console.log(`!! ${rule.name}: taken out, ${passes === true ? `${rule.test} still passes` : 'it does not build'}`);
    }
  }
}

const roots = Array.from({ length: Number(values['side-by-side']) }, workshop);
// With every rule in, the tests pass: otherwise failing would show nothing.
for (const test of new Set(chosen.map((rule) => rule.test))) {
  if ((await testPasses(roots[0]!, { test })) !== true) {
    console.log(`${test} does not pass with every rule in.`);
    process.exit(1);
  }
}
await Promise.all(roots.map(bench));
for (const root of roots) rmSync(root, { recursive: true, force: true });
console.log(
  `${chosen.length} rules taken out in turn in ${((performance.now() - begun) / 1000).toFixed(0)} s: ${seen} seen by a test, ${unseen.length} not`,
);
process.exitCode = unseen.length === 0 ? 0 : 1;
