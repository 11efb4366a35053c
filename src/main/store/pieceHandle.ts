import { join } from 'node:path';
import type { Outcome } from '../../core/model/outcome.ts';
import { failure, success } from '../../core/model/outcome.ts';
import { type FileTag, fileProblem } from '../files/fileProblem.ts';
import { PART_ENDING } from '../files/writeWhole.ts';
import { layout } from './layout.ts';
import { type LockTag, type PieceLock, takeLock } from './pieceLock.ts';
import { type ReadPiece, type ReadPieceTag, readPiece } from './readPiece.ts';
import { removeTree } from './removeTree.ts';
import type { StorePorts } from './storePorts.ts';
import type { LockOwner } from './thisProcess.ts';

/** A piece folder that is open here. Without a lock it may only be read. */
export interface PieceHandle {
  readonly folder: string;
  readonly lock: PieceLock | null;
  /** Why it may not be written; null when it may. */
  readonly readOnly: string | null;
}

export interface OpenedFolder extends ReadPiece {
  readonly handle: PieceHandle;
}

/**
 * Opens a piece folder for writing; when that can't be, for reading, saying why.
 * @param takeOver takes a lock that another machine left behind.
 */
export async function openPieceFolder(
  ports: StorePorts,
  folder: string,
  owner: LockOwner,
  takeOver = false,
): Promise<Outcome<OpenedFolder, ReadPieceTag>> {
  const first = await readPiece(ports, folder);
  if (!first.ok) return first;
  if (first.value.readOnly !== null) {
    return success({ ...first.value, handle: { folder, lock: null, readOnly: first.value.readOnly } });
  }
  const lock = await takeLock(ports, folder, owner, takeOver);
  if (!lock.ok) {
    const readOnly = lockSentence(lock.problem.tag, lock.problem.sentence);
    return success({ ...first.value, readOnly, handle: { folder, lock: null, readOnly } });
  }
  // Read again under the lock: between the two another program may have saved.
  const under = await readPiece(ports, folder);
  if (!under.ok) {
    await lock.value.release();
    return under;
  }
  await sweepParts(ports, folder);
  return success({ ...under.value, handle: { folder, lock: lock.value, readOnly: null } });
}

const lockSentence = (tag: LockTag, sentence: string): string =>
  tag === 'not-allowed' ? "This piece's folder can't be written to, so it can be looked at but not changed." : sentence;

/** Removes what a stopped program left half-written. Safe under the lock: nobody else writes here. */
async function sweepParts(ports: StorePorts, folder: string): Promise<void> {
  for (const place of [folder, layout.photos(folder), layout.checks(folder), layout.previous(folder)]) {
    const names = await ports.files.list(place).catch(() => [] as readonly string[]);
    for (const name of names) {
      // Lock attempts and clock probes of others are theirs to remove.
      if (!name.startsWith('.') || !name.endsWith(PART_ENDING)) continue;
      if (name.startsWith('.lock.') || name.startsWith('.clock.')) continue;
      await removeTree(ports.files, join(place, name)).catch(() => undefined);
    }
  }
}

/** Whether the handle may write just now. */
export async function mayWrite(handle: PieceHandle): Promise<Outcome<void, 'read-only' | 'lock-lost' | FileTag>> {
  if (handle.lock === null) {
    return failure(
      'read-only',
      handle.readOnly ?? 'This piece can be looked at but not changed.',
      'Close it where it is open, then open it again here.',
    );
  }
  try {
    if (await handle.lock.stillOurs()) return success(undefined);
  } catch (thrown) {
    return fileProblem(thrown, 'keeping the piece');
  }
  return failure(
    'lock-lost',
    'Another Plumbweft took this piece over, so nothing was written here.',
    'Open the piece again to see what is kept, then make the change once more.',
  );
}
