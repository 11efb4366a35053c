import { join } from 'node:path';
import { failure, success } from '../../core/model/outcome.ts';
import type { FileLayer } from '../files/fileLayer.ts';
import { type EntrySource, importLimits } from './entrySource.ts';

/** Folders inside a piece lie one deep; anything deeper isn't a piece's. */
const DEEPEST = 3;

/** A folder to bring a piece in from. Links are named, never followed. */
export function openFolderSource(files: FileLayer, root: string): EntrySource {
  let count = 0;
  async function* walk(folder: string, prefix: string, depth: number): ReturnType<EntrySource['entries']> {
    for (const name of await files.list(folder)) {
      if (++count > importLimits.entries) {
        yield failure(
          'too-many-entries',
          `The folder holds more than ${importLimits.entries} files, more than any piece does.`,
          'Choose the folder of the piece itself.',
        );
        return;
      }
      const path = join(folder, name);
      const stat = await files.stat(path);
      if (stat === null) continue;
      yield success({
        name: prefix + name + (stat.kind === 'folder' ? '/' : ''),
        kind: stat.kind,
        size: stat.size,
        crc: null,
        open: async () => files.readPieces(path),
      });
      if (stat.kind === 'folder' && depth < DEEPEST) yield* walk(path, `${prefix}${name}/`, depth + 1);
    }
  }
  return { entries: () => walk(root, '', 0), close: () => undefined };
}
