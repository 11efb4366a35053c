/**
 * Makes resources/sample from the rendered sequence: the piece, its photographs by hash, what is said of them, and the
 * checks the program itself makes of the first four. Run after a change to measuring or to a document:
 *   npm run -s sample
 */
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { CheckRecord } from '../src/core/model/check.ts';
import type { Piece, Yarn } from '../src/core/model/piece.ts';
import { grams, metres } from '../src/core/model/units.ts';
import { parseBrief, pieceFromBrief } from '../src/core/project/brief.ts';
import { checkDocument } from '../src/core/project/checkDocument.ts';
import { serialiseDocument } from '../src/core/project/document.ts';
import { pieceDocument } from '../src/core/project/pieceDocument.ts';
import { sha256 } from '../src/main/files/sha256.ts';
import { askVision } from '../src/main/vision/visionJobs.ts';

const root = resolve(import.meta.dirname, '..');
const sequence = join(root, 'tests/fixtures/sequence');
const target = join(root, 'resources/sample');
const CREATED = '2026-09-28T09:00:00.000Z';
const KEPT = ['2026-10-05', '2026-10-12', '2026-10-19', '2026-10-26'].map((day) => `${day}T17:30:00.000Z`);

const brief = parseBrief(JSON.parse(readFileSync(join(sequence, 'seq1.brief.json'), 'utf8')));
if (!brief.ok) throw new Error(brief.problem.sentence);
const plain = pieceFromBrief(brief.value, CREATED);

const named = (yarn: Yarn, name: string): Yarn => ({
  ...yarn,
  name,
  label: { metres: metres(50), grams: grams(50) },
  strands: 2,
  ballGrams: grams(50),
});
const yarnNames = ['Ink wool', 'Cream wool', 'Ochre wool'];
const shapeNames = ['Flame', 'Lantern'];
const piece: Piece = {
  ...plain,
  name: 'Harbour lantern',
  loom: { ...plain.loom, name: 'Notched frame' },
  warp: { ...plain.warp, yarnName: 'Cotton warp' },
  yarns: plain.yarns.map((yarn, index) => named(yarn, yarnNames[index]!)),
  shapes: plain.shapes.map((shape, index) => ({ ...shape, name: shapeNames[index]! })),
  notes: [{ id: 'n1', at: CREATED, kind: 'planned', text: 'A lit lantern on an ink ground, for a hallway.' }],
};

rmSync(target, { recursive: true, force: true });
for (const folder of ['photos', 'checks', 'previous']) mkdirSync(join(target, 'piece', folder), { recursive: true });
writeFileSync(join(target, 'piece/piece.json'), serialiseDocument(pieceDocument, piece, 1, sha256));
writeFileSync(join(target, 'piece/previous/piece-00000001.json'), serialiseDocument(pieceDocument, piece, 1, sha256));

const photos = readdirSync(sequence)
  .filter((name) => name.endsWith('.jpg'))
  .sort()
  .map((file, index) => {
    const hash = sha256(readFileSync(join(sequence, file)));
    cpSync(join(sequence, file), join(target, 'piece/photos', `${hash}.jpg`));
    return { hash, name: `Harbour lantern, stage ${index + 1} (rendered).jpg`, rendered: true };
  });
const note =
  'These five pictures are rendered by the program in scripts/render, not photographs of a loom; the app says so wherever it shows them.';
writeFileSync(join(target, 'labels.json'), `${JSON.stringify({ note, photos }, null, 1)}\n`);

for (const [index, kept] of KEPT.entries()) {
  const photo = photos[index]!;
  const bytes = readFileSync(join(target, 'piece/photos', `${photo.hash}.jpg`));
  const worker = { path: join(root, 'out/main/visionWorker.js'), seconds: 300 };
  const measured = await askVision<'measure'>(worker, {
    kind: 'measure',
    bytes,
    piece,
    marks: null,
    camera: null,
    cameras: [],
    mirrored: null,
    lenses: [],
    earlier: null,
  });
  if (!measured.ok) throw new Error(measured.problem.sentence);
  const { reading } = measured.value;
  console.log(`${photo.name}: ${reading.status} ${reading.flags.map((flag) => flag.message.mm).join(' | ')}`);
  if (reading.status !== 'measured') continue;
  const id = `${kept.slice(0, 10).replaceAll('-', '')}-173000-000-s${index + 1}`;
  // Times differ from run to run; the sample doesn't keep them.
  const record: CheckRecord = {
    id,
    kept,
    taken: null,
    photo: { hash: photo.hash, name: photo.name, rendered: true, camera: null },
    marks: null,
    reading: { ...reading, timingMs: {} },
    dismissed: [],
    note: '',
  };
  writeFileSync(join(target, `piece/checks/${id}.json`), serialiseDocument(checkDocument, record, 1, sha256));
}
