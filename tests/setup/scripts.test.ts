import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fixture, projectRoot } from '../support/pieces.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

const start = join(projectRoot, 'scripts/start.mjs');

test('without the Electron runtime the local host starts, says why, and answers', async () => {
  const home = temporaryFolder();
  // A folder that holds no runtime: found missing by its files, without asking the package, which would fetch it.
  const env = { ...process.env, PLUMBWEFT_HOME: home, ELECTRON_OVERRIDE_DIST_PATH: join(home, 'none'), DISPLAY: '' };
  const child = spawn(process.execPath, [start, '--no-open', '--port', '0'], { env });
  let said = '';
  const address = await new Promise<string>((resolve, reject) => {
    child.stdout.on('data', (data) => {
      said += String(data);
      const found = /http:\/\/127\.0\.0\.1:\d+\/start\/\S+/.exec(said);
      if (found) resolve(found[0]);
    });
    child.on('exit', () => reject(new Error(said)));
  });
  expect(said.split('\n')[0]).toBe(
    "Starting Plumbweft in the browser: the Electron runtime isn't on this computer and couldn't be fetched.",
  );
  const first = await fetch(address, { redirect: 'manual' });
  const cookie = first.headers.get('set-cookie')!.split(';')[0]!;
  const page = await fetch(new URL('/', address), { headers: { cookie } });
  expect(await page.text()).toContain('<div id="root">');
  child.kill('SIGTERM');
  expect(await new Promise((resolve) => child.on('exit', resolve))).toBe(0);
});

test('with the Electron runtime and a screen it starts that', () => {
  const dist = temporaryFolder();
  const runtime = join(dist, 'electron');
  writeFileSync(runtime, '#!/bin/sh\necho "window for $1"\n');
  chmodSync(runtime, 0o755);
  const env = { ...process.env, ELECTRON_OVERRIDE_DIST_PATH: dist, DISPLAY: ':99' };
  const done = spawnSync(process.execPath, [start], { env, encoding: 'utf8' });
  expect(done.stdout).toBe(
    `Starting Plumbweft in its own window: the Electron runtime is here.\nwindow for ${projectRoot}\n`,
  );
});

test('a command prints nothing of its setting up on standard output', () => {
  const done = spawnSync(process.execPath, [join(projectRoot, 'scripts/setup.mjs'), 'command'], { encoding: 'utf8' });
  expect(done).toMatchObject({ status: 0, stdout: '' });
});

const cli = (...args: string[]) =>
  spawnSync(process.execPath, [join(projectRoot, 'out/main/command.js'), ...args], { encoding: 'utf8' });

test('the command line ends with the codes that are promised', () => {
  const home = temporaryFolder();
  const piece = join(home, 'piece');
  expect(cli().status).toBe(2);
  expect(cli('weave').status).toBe(2);
  expect(cli('check', piece).status).toBe(2);
  expect(cli('check', piece, 'x.jpg', '--sparkle').status).toBe(2);
  expect(cli('new', piece).status).toBe(2);
  expect(cli('new', piece, '--brief', join(home, 'none.json')).status).toBe(2);
  expect(cli('--help').status).toBe(0);
  expect(cli('new', '--brief', fixture('photos/dev01.brief.json'), piece).status).toBe(0);
  expect(cli('new', '--brief', fixture('photos/dev01.brief.json'), piece).status).toBe(2);
  expect(cli('check', join(home, 'nowhere'), 'x.jpg').status).toBe(2);
  expect(cli('check', piece, join(home, 'none.jpg')).status).toBe(2);
  expect(cli('check', piece, fixture('photos/dev01.jpg'), '--points', '1,2 3,4').status).toBe(2);
  const letter = join(home, 'letter.jpg');
  writeFileSync(letter, 'Dear weaver, this is a letter.');
  const refused = cli('check', piece, letter, '--json');
  expect(refused.status).toBe(4);
  expect(JSON.parse(refused.stdout)).toMatchObject({
    photo: letter,
    status: 'refused',
    reasons: [{ code: 'unreadable-file', message: expect.any(String), remedy: expect.any(String) }],
    ends: [],
  });
  expect(cli('verify', piece)).toMatchObject({ status: 0, stdout: expect.stringMatching(/piece\.json is whole/) });
  writeFileSync(join(piece, 'piece.json'), '{');
  expect(cli('verify', piece).status).toBe(5);
  expect(cli('check', piece, letter).status).toBe(5);
  expect(cli('verify', piece, '--mend')).toMatchObject({ stdout: expect.stringMatching(/is back in its place/) });
  expect(cli('verify', piece).status).toBe(0);
  mkdirSync(join(home, 'empty'));
  expect(cli('plan', join(home, 'empty')).status).toBe(2);
  expect(cli('export', piece, join(home, 'p.zip')).status).toBe(0);
  expect(cli('import', join(home, 'p.zip'), join(home, 'back')).status).toBe(0);
  expect(cli('import', letter, join(home, 'back2')).status).toBe(5);
});
