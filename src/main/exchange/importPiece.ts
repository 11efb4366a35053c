import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import { pieceDocument } from '../../core/project/pieceDocument.ts';
import { type FileTag, fileProblem } from '../files/fileProblem.ts';
import { checkIds, readCheck } from '../store/checkStore.ts';
import { type CreateTag, makeFolderWhole } from '../store/createPiece.ts';
import { layout } from '../store/layout.ts';
import { keepVersion, previousRevisions } from '../store/previousVersions.ts';
import { readDocument } from '../store/readDocument.ts';
import { readPiece } from '../store/readPiece.ts';
import type { StorePorts } from '../store/storePorts.ts';
import { type EntrySource, type ImportTag, type IncomingEntry, importLimits } from './entrySource.ts';
import { entryPath, readEntryName } from './pieceEntry.ts';

export type ImportedTag = ImportTag | CreateTag | FileTag | 'incoming-damaged';

const turnedAway = (name: string, why: string) =>
  failure(
    'unsafe-entry',
    `It holds ${why}, so nothing was brought in.`,
    'Choose a zip or folder that Plumbweft made.',
    JSON.stringify(name.slice(0, 80)),
  );

/** The one folder a whole piece may lie in, drawn from the first name that ends in `piece.json`. */
const prefixOf = (names: readonly string[]): string => {
  for (const name of names) {
    const found = /^([^/]+\/)?piece\.json$/.exec(name);
    if (found) return found[1] ?? '';
  }
  return '';
};

async function listed(source: EntrySource): Promise<Outcome<IncomingEntry[], ImportTag>> {
  const entries: IncomingEntry[] = [];
  for await (const entry of source.entries()) {
    if (!entry.ok) return entry;
    if (entry.value.name.length > importLimits.nameLength) return turnedAway(entry.value.name, 'a name far too long');
    entries.push(entry.value);
  }
  return success(entries);
}

/** Which files to write, after every name, kind and size has been looked at. */
function plan(
  entries: readonly IncomingEntry[],
): Outcome<
  readonly { readonly entry: IncomingEntry; readonly path: readonly string[]; readonly hash: string | null }[],
  ImportTag
> {
  const prefix = prefixOf(entries.map((entry) => entry.name));
  const seen = new Set<string>();
  const planned: { entry: IncomingEntry; path: readonly string[]; hash: string | null }[] = [];
  let documents = 0;
  let whole = 0;
  for (const entry of entries) {
    if (entry.kind === 'link') return turnedAway(entry.name, 'a link to another place');
    if (entry.kind === 'other') return turnedAway(entry.name, "something that isn't a plain file");
    const inside = entry.name === prefix ? '' : entry.name.startsWith(prefix) ? entry.name.slice(prefix.length) : null;
    if (inside === '') continue;
    const means = readEntryName(inside ?? entry.name);
    if (means === null || (inside === null && means.part !== 'ignored')) {
      return turnedAway(entry.name, "something that isn't part of a piece");
    }
    if (means.part === 'folder' || means.part === 'ignored') continue;
    const at = means.path.join('/');
    if (seen.has(at)) {
      return failure(
        'double-entry',
        'It holds the same file twice, so nothing was brought in.',
        'Make the zip again where the piece is kept.',
        at,
      );
    }
    seen.add(at);
    const limit = means.part === 'photo' ? importLimits.photoBytes : importLimits.documentBytes;
    whole += entry.size;
    if (means.part === 'document') documents += entry.size;
    if (entry.size > limit || whole > importLimits.wholeBytes || documents > importLimits.documentsBytes) {
      return failure(
        'too-big',
        'It unpacks to far more than a piece holds, so nothing was brought in.',
        'Choose a zip that Plumbweft made.',
        at,
      );
    }
    planned.push({ entry, path: means.path, hash: means.part === 'photo' ? means.hash : null });
  }
  if (!seen.has('piece.json')) {
    return failure('not-a-piece', 'There is no piece in it.', 'Choose a zip or folder that holds a piece.json.');
  }
  return success(planned);
}

const damaged = (detail: string) =>
  failure(
    'damaged-entry',
    'A file in it is damaged, so nothing was brought in.',
    'Copy the zip again, or make it again where the piece is kept.',
    detail,
  );

/** Copies one file, proving length, checksum and, for a photograph, its name. */
async function copyIn(
  ports: StorePorts,
  target: string,
  entry: IncomingEntry,
  hash: string | null,
): Promise<Outcome<void, ImportTag>> {
  const file = await ports.files.create(target);
  const sum = createHash('sha256');
  let crc = 0;
  let length = 0;
  try {
    let stream: AsyncIterable<Uint8Array>;
    try {
      stream = await entry.open();
    } catch (thrown) {
      return damaged(thrown instanceof Error ? thrown.message.slice(0, 120) : 'thrown');
    }
    const reader = stream[Symbol.asyncIterator]();
    for (;;) {
      let next: IteratorResult<Uint8Array>;
      try {
        next = await reader.next();
      } catch (thrown) {
        return damaged(thrown instanceof Error ? thrown.message.slice(0, 120) : 'thrown');
      }
      if (next.done === true) break;
      length += next.value.length;
      if (length > entry.size) return damaged('longer than declared');
      crc = crc32(next.value, crc);
      sum.update(next.value);
      await file.write(next.value);
    }
    await file.flush();
  } finally {
    await file.close();
  }
  if (length !== entry.size) return damaged('shorter than declared');
  if (entry.crc !== null && crc !== entry.crc) return damaged('CRC-32 differs');
  if (hash !== null && sum.digest('hex') !== hash) return damaged('photograph differs from its name');
  return success(undefined);
}

/** Reads everything that was copied as if it were opened: nothing half-right is brought in. */
async function prove(ports: StorePorts, folder: string): Promise<Outcome<void, 'incoming-damaged'>> {
  const wrong = (sentence: string, remedy: string, detail: string) =>
    failure('incoming-damaged', `${sentence} Nothing was brought in.`, remedy, detail);
  const piece = await readPiece(ports, folder);
  if (!piece.ok) return wrong(piece.problem.sentence, piece.problem.remedy, piece.problem.tag);
  for (const id of await checkIds(ports, folder)) {
    const check = await readCheck(ports, folder, id);
    if (!check.ok && check.problem.tag !== 'too-new') {
      return wrong(check.problem.sentence, check.problem.remedy, `${check.problem.tag} ${id}`);
    }
  }
  return success(undefined);
}

/** Kept versions that don't read are left behind: they are spare copies, and a bad one must not stop the piece. */
async function dropBadVersions(ports: StorePorts, folder: string): Promise<void> {
  for (const revision of await previousRevisions(ports, folder)) {
    const path = layout.previousPiece(folder, revision);
    const read = await readDocument(ports, pieceDocument, path);
    if (!read.ok || read.value.revision !== revision) await ports.files.remove(path);
  }
}

/** The current version gets its second copy, as every saved one has. */
async function ensureSecondCopy(ports: StorePorts, folder: string): Promise<void> {
  const read = await readDocument(ports, pieceDocument, layout.piece(folder));
  if (!read.ok || (await previousRevisions(ports, folder)).includes(read.value.revision)) return;
  await keepVersion(ports, folder, read.value.revision, read.value.text);
}

/** Brings a piece in as a new folder: all of it or nothing. */
export async function importPiece(
  ports: StorePorts,
  source: EntrySource,
  folder: string,
): Promise<Outcome<void, ImportedTag>> {
  try {
    const entries = await listed(source);
    if (!entries.ok) return entries;
    const planned = plan(entries.value);
    if (!planned.ok) return planned;
    return await makeFolderWhole<ImportTag | 'incoming-damaged'>(ports, folder, async (temporary) => {
      for (const name of ['photos', 'checks', 'previous']) await ports.files.makeFolder(join(temporary, name));
      for (const { entry, path, hash } of planned.value) {
        const copied = await copyIn(ports, entryPath(temporary, path), entry, hash);
        if (!copied.ok) return copied;
      }
      for (const name of ['photos', 'checks', 'previous']) await ports.files.flushFolder(join(temporary, name));
      await dropBadVersions(ports, temporary);
      const proved = await prove(ports, temporary);
      if (proved.ok) await ensureSecondCopy(ports, temporary);
      return proved;
    });
  } catch (thrown) {
    return fileProblem(thrown, 'bringing the piece in');
  } finally {
    source.close();
  }
}
