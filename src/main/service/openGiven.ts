import { basename, dirname, resolve } from 'node:path';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import { importPiece } from '../exchange/importPiece.ts';
import { openZipSource } from '../exchange/zipSource.ts';
import { fileProblem } from '../files/fileProblem.ts';
import { readPiece } from '../store/readPiece.ts';
import { ensureTree } from './ensureTree.ts';
import { freeFolder, keyOf, type PieceLibrary } from './pieceLibrary.ts';
import type { ServicePorts } from './servicePorts.ts';

/** A packed piece's own ending, which the packed program is opened by; what is in it is a zip. */
export const PACKED_ENDING = '.plumbweft';
export const withoutEnding = (name: string): string => name.replace(/\.(?:zip|plumbweft)$/i, '');

/**
 * Takes what the system hands over to be opened: a packed piece, which is brought in beside the others, a piece's
 * folder, or the `piece.json` in it.
 * @returns the piece's key; it stands in the list then, and isn't open yet.
 */
export async function takeGiven(ports: ServicePorts, library: PieceLibrary, given: string): Promise<Outcome<string>> {
  const { store, places } = ports;
  try {
    const path = resolve(given);
    const stat = await store.files.stat(path);
    if (stat?.kind !== 'file' && stat?.kind !== 'folder') {
      return failure('not-there', 'There is nothing to open at that place.', 'Choose a piece from the list.');
    }
    let folder = stat.kind === 'folder' ? path : dirname(path);
    if (stat.kind === 'file' && basename(path) !== 'piece.json') {
      const source = await openZipSource(path);
      if (!source.ok) return source;
      await ensureTree(places.pieces);
      folder = await freeFolder(ports, withoutEnding(basename(path)));
      const brought = await importPiece(store, source.value, folder);
      if (!brought.ok) return brought;
    }
    const read = await readPiece(store, folder);
    if (!read.ok) return read;
    await library.remember(folder, false);
    return success(keyOf(folder));
  } catch (thrown) {
    return fileProblem(thrown, 'opening the piece');
  }
}
