import { spawn } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readFileSync, symlinkSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { projectRoot } from '../support/pieces.ts';
import { startStubbed } from '../support/stubbedElectron/startStubbed.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

const logOf = (home: string): string => {
  const path = join(home, 'data/log/plumbweft.log');
  return existsSync(path) ? readFileSync(path, 'utf8') : '';
};
const secret = `open '${homedir()}/Her piece/piece.json'`;

/** The built program without its page. */
function crippled(): string {
  const root = temporaryFolder();
  mkdirSync(join(root, 'out'));
  for (const part of ['main', 'preload'])
    cpSync(join(projectRoot, 'out', part), join(root, 'out', part), { recursive: true });
  cpSync(join(projectRoot, 'package.json'), join(root, 'package.json'));
  symlinkSync(join(projectRoot, 'node_modules'), join(root, 'node_modules'));
  return root;
}

/** The local host with a lever inside: one signal makes it reject, another throw. */
function startLocal(root: string, home: string) {
  const levers = [
    `process.on('SIGUSR2', () => { Promise.reject(new Error(process.env.SECRET)); });`,
    `process.on('SIGWINCH', () => { throw new Error(process.env.SECRET); });`,
  ].join('');
  const child = spawn(
    process.execPath,
    [
      '--import',
      `data:text/javascript,${encodeURIComponent(levers)}`,
      join(root, 'out/main/local.js'),
      '--no-open',
      '--port',
      '0',
    ],
    { env: { ...process.env, PLUMBWEFT_HOME: home, SECRET: secret } },
  );
  onTestFinished(() => void child.kill('SIGKILL'));
  let said = '';
  child.stdout.on('data', (data) => (said += String(data)));
  child.stderr.on('data', (data) => (said += String(data)));
  const ended = new Promise<number | null>((resolve) => child.on('exit', resolve));
  const until = async (found: () => boolean) => {
    while (!found()) await new Promise((later) => setTimeout(later, 20));
  };
  return { child, ended, until, said: () => said };
}

test('Electron: a rejection nobody handled is noted without private folders, and the program goes on', async () => {
  const home = temporaryFolder();
  const main = startStubbed(home);
  await main.ask('reject', { words: secret });
  expect(await main.ask('call', { name: 'about', params: {} })).toMatchObject({ ok: true });
  const log = logOf(home);
  expect(log).toMatch(/problem unhandled: Error: open '<path>'/);
  expect(log).not.toContain(homedir());
  main.stop();
});

test('Electron: an uncaught throw is noted, and the program ends', async () => {
  const home = temporaryFolder();
  const main = startStubbed(home);
  await main.ask('throw', { words: secret });
  expect(await main.ended).toBe(1);
  expect(logOf(home)).toMatch(/problem uncaught: Error: open '<path>'/);
});

test('Electron: what keeps it from starting is said', async () => {
  const home = temporaryFolder();
  const main = startStubbed(home, { PLUMBWEFT_BUNDLE: join(crippled(), 'out') });
  expect(await main.ask('app')).toEqual({
    sentence: 'Plumbweft could not start.',
    remedy: expect.stringMatching(/^A part of it is missing.*Install it again/),
  });
  expect(await main.ended).toBe(1);
  expect(logOf(home)).toMatch(/problem not started: Error: ENOENT/);
});

test('local host: a rejection nobody handled is noted, and it goes on; an uncaught throw ends it', async () => {
  const home = temporaryFolder();
  const { child, ended, until, said } = startLocal(projectRoot, home);
  await until(() => /start\/\S+/.test(said()));
  child.kill('SIGUSR2');
  await until(() => logOf(home).includes('unhandled'));
  expect(logOf(home)).toMatch(/problem unhandled: Error: open '<path>'/);
  const address = /http:\S+/.exec(said())![0];
  expect((await fetch(address, { redirect: 'manual' })).status).toBe(303);
  child.kill('SIGWINCH');
  expect(await ended).toBe(1);
  expect(logOf(home)).toMatch(/problem uncaught: Error: open '<path>'/);
  expect(logOf(home)).not.toContain(homedir());
});

test('local host: what keeps it from starting is said in a sentence, without folders', async () => {
  const home = temporaryFolder();
  const { ended, said } = startLocal(crippled(), home);
  expect(await ended).toBe(1);
  expect(said()).toMatch(/^Plumbweft could not start\. .*Install it again/);
  expect(said()).not.toMatch(/ENOENT|\//);
});
