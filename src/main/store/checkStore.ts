import type { CheckRecord } from '../../core/model/check.ts';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import { checkDocument } from '../../core/project/checkDocument.ts';
import { type DocumentTag, serialiseDocument } from '../../core/project/document.ts';
import { type FileTag, fileProblem } from '../files/fileProblem.ts';
import { sha256 } from '../files/sha256.ts';
import { writeWhole } from '../files/writeWhole.ts';
import { CHECK_NAME, layout } from './layout.ts';
import { photoPath } from './photoStore.ts';
import { mayWrite, type PieceHandle } from './pieceHandle.ts';
import { ensureFolder } from './previousVersions.ts';
import { readDocument } from './readDocument.ts';
import type { StorePorts } from './storePorts.ts';

export type CheckStoreTag = 'check-missing' | 'check-taken' | 'read-only' | 'lock-lost' | DocumentTag | FileTag;

/** Names of the kept checks, oldest first: a check's id begins with the instant it was kept. */
export async function checkIds(ports: StorePorts, folder: string): Promise<readonly string[]> {
  if ((await ports.files.stat(layout.checks(folder)))?.kind !== 'folder') return [];
  const ids: string[] = [];
  for (const name of await ports.files.list(layout.checks(folder))) {
    const found = CHECK_NAME.exec(name);
    if (found) ids.push(found[1]!);
  }
  return ids.sort();
}

export async function readCheck(
  ports: StorePorts,
  folder: string,
  id: string,
): Promise<Outcome<{ readonly record: CheckRecord; readonly revision: number }, CheckStoreTag>> {
  if (!CHECK_NAME.test(`${id}.json`) || (await ports.files.stat(layout.check(folder, id)).catch(() => null)) === null) {
    return failure('check-missing', 'That check is no longer in the piece.', 'Choose another from the list.');
  }
  const read = await readDocument(ports, checkDocument, layout.check(folder, id));
  if (!read.ok) return read;
  if (read.value.body.id !== id) {
    return failure(
      'not-as-described',
      'A check file carries the name of another check.',
      'Mend the piece with "plumbweft verify --mend".',
      `check ${id} holds ${read.value.body.id}`,
    );
  }
  return success({ record: read.value.body, revision: read.value.revision });
}

async function write(
  ports: StorePorts,
  handle: PieceHandle,
  record: CheckRecord,
  revision: number,
): Promise<Outcome<CheckRecord, CheckStoreTag>> {
  try {
    const text = serialiseDocument(checkDocument, record, revision, sha256);
    await ensureFolder(ports, handle.folder, layout.checks(handle.folder));
    const path = layout.check(handle.folder, record.id);
    await writeWhole(ports.files, path, [new TextEncoder().encode(text)], ports.token());
    return success(record);
  } catch (thrown) {
    return fileProblem(thrown, 'keeping the check');
  }
}

async function flushed<Value>(
  ports: StorePorts,
  folder: string,
  value: Value,
  doing: string,
): Promise<Outcome<Value, FileTag>> {
  try {
    await ports.files.flushFolder(folder);
    return success(value);
  } catch (thrown) {
    return fileProblem(thrown, doing);
  }
}

/** Keeps a new check. Its photograph is kept before it, so that a check never points at nothing. */
export async function keepCheck(
  ports: StorePorts,
  handle: PieceHandle,
  record: CheckRecord,
): Promise<Outcome<CheckRecord, CheckStoreTag>> {
  const allowed = await mayWrite(handle);
  if (!allowed.ok) return allowed;
  if ((await ports.files.stat(layout.check(handle.folder, record.id)).catch(() => null)) !== null) {
    // The same check asked for again, because the first answer got lost, is kept once.
    const there = await readDocument(ports, checkDocument, layout.check(handle.folder, record.id));
    if (there.ok && there.value.text === serialiseDocument(checkDocument, record, 1, sha256)) {
      return flushed(ports, layout.checks(handle.folder), record, 'keeping the check');
    }
    return failure('check-taken', 'A check of that name is kept already.', 'Keep it once more.');
  }
  return write(ports, handle, record, 1);
}

/** Changes a kept check, for example when a flag is put aside. */
export async function changeCheck(
  ports: StorePorts,
  handle: PieceHandle,
  id: string,
  change: (record: CheckRecord) => CheckRecord,
): Promise<Outcome<CheckRecord, CheckStoreTag>> {
  const allowed = await mayWrite(handle);
  if (!allowed.ok) return allowed;
  const read = await readCheck(ports, handle.folder, id);
  if (!read.ok) return read;
  return write(ports, handle, change(read.value.record), read.value.revision + 1);
}

/** Throws a check away, and its photograph when no other check was made from it. One that is gone already is gone. */
export async function discardCheck(
  ports: StorePorts,
  handle: PieceHandle,
  id: string,
): Promise<Outcome<void, CheckStoreTag>> {
  const allowed = await mayWrite(handle);
  if (!allowed.ok) return allowed;
  const read = await readCheck(ports, handle.folder, id);
  if (!read.ok && read.problem.tag === 'check-missing') {
    return flushed(ports, layout.checks(handle.folder), undefined, 'throwing the check away');
  }
  if (!read.ok) return read;
  const hash = read.value.record.photo.hash;
  try {
    for (const other of await checkIds(ports, handle.folder)) {
      if (other === id) continue;
      const kept = await readCheck(ports, handle.folder, other);
      // A check that can't be read may need the photograph: leave it.
      if (!kept.ok || kept.value.record.photo.hash === hash) {
        await ports.files.remove(layout.check(handle.folder, id));
        await ports.files.flushFolder(layout.checks(handle.folder));
        return success(undefined);
      }
    }
    await ports.files.remove(layout.check(handle.folder, id));
    await ports.files.flushFolder(layout.checks(handle.folder));
    const path = await photoPath(ports, handle.folder, hash);
    if (path !== null) {
      await ports.files.remove(path);
      await ports.files.flushFolder(layout.photos(handle.folder));
    }
    return success(undefined);
  } catch (thrown) {
    return fileProblem(thrown, 'throwing the check away');
  }
}
