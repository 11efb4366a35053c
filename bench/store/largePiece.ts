/**
 * A piece with 2,000 checks and 10 GB of photographs: opens, lists, verifies and exports it, each in a process of its
 * own, and prints the time per 1,000 and the largest memory.
 *   npm run -s large [-- --checks 2000] [--photos 200] [--mb 50]
 */
import { spawnSync } from 'node:child_process';
import {
  closeSync,
  ftruncateSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { checkDocument } from '../../src/core/project/checkDocument.ts';
import { loadDocument, serialiseDocument } from '../../src/core/project/document.ts';
import { nodeFiles } from '../../src/main/files/nodeFiles.ts';
import { sha256, sha256OfFile } from '../../src/main/files/sha256.ts';
import { bundleForNode } from '../../tests/support/bundleForNode.ts';
import { fixture, lanternFolder, projectRoot } from '../../tests/support/pieces.ts';

const { values } = parseArgs({
  options: {
    checks: { type: 'string', default: '2000' },
    photos: { type: 'string', default: '200' },
    mb: { type: 'string', default: '50' },
  },
});
const checks = Number(values.checks);
const photos = Number(values.photos);
const size = Number(values.mb) * 1024 * 1024;
const LIMIT_MB = 400;
const home = mkdtempSync(join(tmpdir(), 'plumbweft-large-'));
const folder = join(home, 'piece');
await lanternFolder(folder);

// A photograph with a long sparse tail behind it: its full length is on no disk.
const head = readFileSync(fixture('photos/dev01.jpg'));
const hashes: string[] = [];
for (let index = 0; index < photos; index++) {
  const path = join(home, 'photo');
  const file = openSync(path, 'w');
  writeSync(file, head);
  writeSync(file, Buffer.from(String(index)));
  ftruncateSync(file, size);
  closeSync(file);
  const hash = await sha256OfFile(nodeFiles, path);
  renameSync(path, join(folder, 'photos', `${hash}.jpg`));
  hashes.push(hash);
}
// Checks as large as a real one: the largest of the sample's, where there is one.
const kept = join(projectRoot, 'resources/sample/piece/checks');
const names = readdirSync(kept).sort();
const sample = names.length > 0 ? join(kept, names.at(-1)!) : fixture('documents/check-v1.json');
const loaded = loadDocument(checkDocument, readFileSync(sample, 'utf8'), sha256);
if (!loaded.ok) throw new Error(loaded.problem.sentence);
for (let index = 0; index < checks; index++) {
  const id = `20260101-000000-${String(index).padStart(6, '0')}`;
  const record = { ...loaded.value.body, id, photo: { ...loaded.value.body.photo, hash: hashes[index % photos]! } };
  writeFileSync(join(folder, 'checks', `${id}.json`), serialiseDocument(checkDocument, record, 1, sha256));
}
console.log(
  `${checks} checks of ${Math.round(statSync(sample).size / 1000)} kB, ${photos} photographs, ${((photos * size) / 1e9).toFixed(1)} GB`,
);

const bundle = await bundleForNode(join(projectRoot, 'tests/support/largeChild.ts'));
let worst = 0;
let failed = 0;
for (const what of ['open', 'list', 'verify', 'export', 'clean']) {
  const done = spawnSync(process.execPath, [bundle, what, folder, join(home, `${what}.zip`)], {
    encoding: 'utf8',
    env: { ...process.env, PLUMBWEFT_PROJECT: projectRoot, PLUMBWEFT_HOME: join(home, 'home') },
    maxBuffer: 1 << 26,
  });
  const told = done.status === 0 ? (JSON.parse(done.stdout) as { ms: number; peakMb: number; of: number }) : null;
  if (told === null) {
    failed++;
    console.log(`${what}: ${done.stderr.slice(0, 400)}`);
    continue;
  }
  worst = Math.max(worst, told.peakMb);
  const per = told.of > 0 ? `, ${((told.ms / told.of) * 1000).toFixed(0)} ms per 1,000` : '';
  console.log(`${what.padEnd(7)} ${told.ms.toFixed(0)} ms${per}, ${told.peakMb} MB`);
}
rmSync(home, { recursive: true, force: true });
rmSync(join(bundle, '..'), { recursive: true, force: true });
console.log(`largest memory ${worst} MB of ${LIMIT_MB}, ${failed} failed`);
process.exitCode = failed === 0 && worst < LIMIT_MB ? 0 : 1;
