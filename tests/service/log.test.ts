import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { homedir, hostname } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openLog } from '../../src/main/log/log.ts';
import { redact } from '../../src/main/log/redact.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

const now = () => new Date('2026-11-25T09:00:00.000Z');

test('a log turns over and never grows past its files', () => {
  const folder = temporaryFolder();
  const log = openLog(folder, now, { bytes: 1_000, files: 3 });
  for (let line = 0; line < 500; line++) log.write('note', `line ${line} of the evening`);
  expect(readdirSync(folder).sort()).toEqual([
    'plumbweft.1.log',
    'plumbweft.2.log',
    'plumbweft.3.log',
    'plumbweft.log',
  ]);
  for (const name of readdirSync(folder)) expect(statSync(join(folder, name)).size).toBeLessThanOrEqual(1_000);
  expect(log.recent(2)).toEqual([
    '2026-11-25T09:00:00.000Z note line 498 of the evening',
    '2026-11-25T09:00:00.000Z note line 499 of the evening',
  ]);
  // Another start goes on where the last one stopped.
  openLog(folder, now, { bytes: 1_000, files: 3 }).write('problem', 'later');
  expect(readFileSync(join(folder, 'plumbweft.log'), 'utf8')).toMatch(/problem later\n$/);
});

test('a line is one line, whatever is in it', () => {
  const folder = temporaryFolder();
  openLog(folder, now).write('note', `first\nsecond\r\n${'x'.repeat(9_000)}`);
  const text = readFileSync(join(folder, 'plumbweft.log'), 'utf8');
  expect(text.split('\n')).toHaveLength(2);
  expect(text.length).toBeLessThan(2_100);
});

test('a log that can’t be written stops nothing', () => {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'file'), '');
  const log = openLog(join(folder, 'file/log'), now);
  expect(() => log.write('note', 'anything')).not.toThrow();
  mkdirSync(join(folder, 'log/plumbweft.log'), { recursive: true });
  expect(() => openLog(join(folder, 'log'), now).write('note', 'anything')).not.toThrow();
});

test('folders, the weaver and the machine are taken out', () => {
  const cases: [string, string][] = [
    [`open '${homedir()}/Documents/Plumbweft/Her piece/piece.json'`, "open '<path>'"],
    ['read /srv/private/photos/x.jpg failed', 'read <path> failed'],
    ['at C:\\Users\\Name\\Plumbweft\\x.jpg', 'at <path>'],
    ['at \\\\server\\share\\x', 'at <path>'],
    ['file:///home/x/y.js', '<path>'],
    [`on ${hostname()} today`, 'on <name> today'],
  ];
  for (const [line, clean] of cases) expect(redact(line)).toBe(clean);
});
