import { join } from 'node:path';
import type { FileLayer } from '../files/fileLayer.ts';

/** Removes a folder and what is in it. Links are removed, never followed. */
export async function removeTree(files: FileLayer, path: string): Promise<void> {
  const stat = await files.stat(path);
  if (stat === null) return;
  if (stat.kind !== 'folder') {
    await files.remove(path);
    return;
  }
  for (const name of await files.list(path)) await removeTree(files, join(path, name));
  await files.removeFolder(path);
}
