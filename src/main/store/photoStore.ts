import { join } from 'node:path';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import { type FileTag, fileProblem } from '../files/fileProblem.ts';
import { sha256 } from '../files/sha256.ts';
import { writeWhole } from '../files/writeWhole.ts';
import { layout, PHOTO_LIMIT, PHOTO_NAME } from './layout.ts';
import { mayWrite, type PieceHandle } from './pieceHandle.ts';
import { ensureFolder } from './previousVersions.ts';
import type { StorePorts } from './storePorts.ts';

export const photoEndings = ['jpg', 'png', 'webp', 'avif', 'heic'] as const;
export type PhotoEnding = (typeof photoEndings)[number];

export type PhotoStoreTag = 'photo-missing' | 'photo-damaged' | 'read-only' | 'lock-lost' | FileTag;

/** Every photograph's file name in a piece, sorted. */
export async function photoNames(ports: StorePorts, folder: string): Promise<readonly string[]> {
  if ((await ports.files.stat(layout.photos(folder)))?.kind !== 'folder') return [];
  return (await ports.files.list(layout.photos(folder))).filter((name) => PHOTO_NAME.test(name)).sort();
}

/** Where a photograph's bytes are; null when the piece hasn't got it. */
export async function photoPath(ports: StorePorts, folder: string, hash: string): Promise<string | null> {
  for (const ending of photoEndings) {
    const path = join(layout.photos(folder), `${hash}.${ending}`);
    if ((await ports.files.stat(path))?.kind === 'file') return path;
  }
  return null;
}

/** The original bytes, proved against their name. */
export async function readPhoto(
  ports: StorePorts,
  folder: string,
  hash: string,
): Promise<Outcome<Uint8Array, PhotoStoreTag>> {
  try {
    const path = await photoPath(ports, folder, hash);
    if (path === null) {
      return failure(
        'photo-missing',
        'The photograph is no longer in the piece.',
        'The figures of its checks are still kept. Bring the photograph back from a copy of the piece if you have one.',
        `photo ${hash.slice(0, 12)}`,
      );
    }
    const bytes = await ports.files.read(path, PHOTO_LIMIT);
    if (sha256(bytes) !== hash) {
      return failure(
        'photo-damaged',
        'The photograph was changed outside Plumbweft, or the disk spoilt it.',
        'The figures of its checks are still kept. Bring the photograph back from a copy of the piece if you have one.',
        `photo ${hash.slice(0, 12)}`,
      );
    }
    return success(bytes);
  } catch (thrown) {
    return fileProblem(thrown, 'reading a photograph');
  }
}

/** Keeps a photograph's original bytes under their own hash; one that is already there whole is left. */
export async function addPhoto(
  ports: StorePorts,
  handle: PieceHandle,
  bytes: Uint8Array,
  ending: PhotoEnding,
): Promise<Outcome<string, PhotoStoreTag>> {
  const allowed = await mayWrite(handle);
  if (!allowed.ok) return allowed;
  const hash = sha256(bytes);
  const there = await readPhoto(ports, handle.folder, hash);
  try {
    if (there.ok) {
      // It may have got here by a save whose last flush failed.
      await ports.files.flushFolder(layout.photos(handle.folder));
      return success(hash);
    }
    await ensureFolder(ports, handle.folder, layout.photos(handle.folder));
    const path = join(layout.photos(handle.folder), `${hash}.${ending}`);
    await writeWhole(ports.files, path, [bytes], ports.token());
    return success(hash);
  } catch (thrown) {
    return fileProblem(thrown, 'keeping the photograph');
  }
}
