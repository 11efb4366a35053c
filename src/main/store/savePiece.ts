import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import type { Piece } from '../../core/model/piece.ts';
import type { Progress } from '../../core/model/progress.ts';
import { type DocumentTag, serialiseDocument } from '../../core/project/document.ts';
import { pieceDocument } from '../../core/project/pieceDocument.ts';
import { progressDocument } from '../../core/project/progressDocument.ts';
import { type FileTag, fileProblem } from '../files/fileProblem.ts';
import { sha256 } from '../files/sha256.ts';
import { writeWhole } from '../files/writeWhole.ts';
import { layout } from './layout.ts';
import { mayWrite, type PieceHandle } from './pieceHandle.ts';
import { keepVersion } from './previousVersions.ts';
import { readDocument } from './readDocument.ts';
import type { StorePorts } from './storePorts.ts';

export type SaveTag = 'read-only' | 'lock-lost' | 'changed-elsewhere' | DocumentTag | FileTag;

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);

/**
 * Saves a piece over the revision the caller has seen.
 * A save that is asked for again, because the first answer got lost, succeeds without a second version.
 * @returns the new revision.
 */
export async function savePiece(
  ports: StorePorts,
  handle: PieceHandle,
  seenRevision: number,
  piece: Piece,
): Promise<Outcome<number, SaveTag>> {
  const allowed = await mayWrite(handle);
  if (!allowed.ok) return allowed;
  const disk = await readDocument(ports, pieceDocument, layout.piece(handle.folder));
  if (!disk.ok) return disk;
  const revision = seenRevision + 1;
  const text = serialiseDocument(pieceDocument, piece, revision, sha256);
  if (disk.value.revision === revision && disk.value.text === text) {
    try {
      await ports.files.flushFolder(handle.folder);
      return success(revision);
    } catch (thrown) {
      return fileProblem(thrown, 'keeping the piece');
    }
  }
  if (disk.value.revision !== seenRevision) {
    return failure(
      'changed-elsewhere',
      'The piece was changed by another Plumbweft since it was opened here, so nothing was written.',
      'Open it again to see what is kept, then make the change once more.',
      `revision ${disk.value.revision} on disk, ${seenRevision} seen`,
    );
  }
  try {
    // The file that came from an older Plumbweft stays to be found before it is written over in the new form.
    if (disk.value.keptVersion < pieceDocument.version) {
      await keepVersion(ports, handle.folder, seenRevision, disk.value.text);
    }
    await keepVersion(ports, handle.folder, revision, text);
    await writeWhole(ports.files, layout.piece(handle.folder), [encode(text)], ports.token());
    return success(revision);
  } catch (thrown) {
    return fileProblem(thrown, 'keeping the piece');
  }
}

/** Saves where the weaver is at the loom. */
export async function saveProgress(
  ports: StorePorts,
  handle: PieceHandle,
  progress: Progress,
): Promise<Outcome<void, SaveTag>> {
  const allowed = await mayWrite(handle);
  if (!allowed.ok) return allowed;
  const text = serialiseDocument(progressDocument, progress, 1, sha256);
  try {
    await writeWhole(ports.files, layout.progress(handle.folder), [encode(text)], ports.token());
    return success(undefined);
  } catch (thrown) {
    return fileProblem(thrown, 'keeping your place');
  }
}
