import { join } from 'node:path';
import { pieceDocument } from '../../core/project/pieceDocument.ts';
import { writeWhole } from '../files/writeWhole.ts';
import { layout, PREVIOUS_NAME } from './layout.ts';
import { readDocument } from './readDocument.ts';
import type { StorePorts } from './storePorts.ts';

/** How many of the newest versions of `piece.json` are kept beside it, the current one among them. */
export const PREVIOUS_KEPT = 30;

/** Revisions kept in `previous/`, newest first; empty when there is no such folder. */
export async function previousRevisions(ports: StorePorts, folder: string): Promise<readonly number[]> {
  if ((await ports.files.stat(layout.previous(folder)))?.kind !== 'folder') return [];
  const revisions: number[] = [];
  for (const name of await ports.files.list(layout.previous(folder))) {
    const found = PREVIOUS_NAME.exec(name);
    if (found) revisions.push(Number(found[1]));
  }
  return revisions.sort((a, b) => b - a);
}

/** Makes a folder inside the piece if it isn't there, with its name on the disk. */
export async function ensureFolder(ports: StorePorts, folder: string, path: string): Promise<void> {
  try {
    await ports.files.makeFolder(path);
  } catch (thrown) {
    if ((thrown as NodeJS.ErrnoException).code === 'EEXIST') return;
    throw thrown;
  }
  await ports.files.flushFolder(folder);
}

/** Keeps one version's text; the oldest beyond the kept number go. */
export async function keepVersion(ports: StorePorts, folder: string, revision: number, text: string): Promise<void> {
  await ensureFolder(ports, folder, layout.previous(folder));
  await writeWhole(
    ports.files,
    layout.previousPiece(folder, revision),
    [new TextEncoder().encode(text)],
    ports.token(),
  );
  for (const old of (await previousRevisions(ports, folder)).slice(PREVIOUS_KEPT)) {
    await ports.files.remove(layout.previousPiece(folder, old));
  }
}

/** The newest kept version that still reads whole, or null. */
export async function newestWholeVersion(
  ports: StorePorts,
  folder: string,
): Promise<{ readonly revision: number; readonly text: string } | null> {
  for (const revision of await previousRevisions(ports, folder)) {
    const read = await readDocument(ports, pieceDocument, join(layout.previousPiece(folder, revision)));
    if (read.ok && read.value.revision === revision) return { revision, text: read.value.text };
  }
  return null;
}
