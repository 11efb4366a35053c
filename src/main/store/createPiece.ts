import { basename, dirname, join } from 'node:path';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import type { Piece } from '../../core/model/piece.ts';
import { serialiseDocument } from '../../core/project/document.ts';
import { pieceDocument } from '../../core/project/pieceDocument.ts';
import { type FileTag, fileProblem } from '../files/fileProblem.ts';
import { sha256 } from '../files/sha256.ts';
import { PART_ENDING, writeWhole } from '../files/writeWhole.ts';
import { layout } from './layout.ts';
import { keepVersion } from './previousVersions.ts';
import { removeTree } from './removeTree.ts';
import type { StorePorts } from './storePorts.ts';

export type CreateTag = 'name-taken' | FileTag;

/**
 * Makes a folder appear whole or not at all: it is filled under a temporary name beside its place, then renamed.
 * @param fill puts everything into the temporary folder.
 */
export async function makeFolderWhole<Tag extends string>(
  ports: StorePorts,
  folder: string,
  fill: (temporary: string) => Promise<Outcome<void, Tag>>,
): Promise<Outcome<void, Tag | CreateTag>> {
  const temporary = join(dirname(folder), `.${basename(folder)}.${ports.token()}${PART_ENDING}`);
  try {
    if ((await ports.files.stat(folder)) !== null) {
      return failure(
        'name-taken',
        `There is already something called "${basename(folder)}" there.`,
        'Choose another name.',
      );
    }
    await ports.files.makeFolder(temporary);
    const filled = await fill(temporary);
    if (!filled.ok) {
      await removeTree(ports.files, temporary);
      return filled;
    }
    await ports.files.flushFolder(temporary);
    await ports.files.rename(temporary, folder);
    await ports.files.flushFolder(dirname(folder));
    return success(undefined);
  } catch (thrown) {
    await removeTree(ports.files, temporary).catch(() => undefined);
    return fileProblem(thrown, 'making the piece');
  }
}

/** A new piece folder with its first version. */
export const createPiece = (ports: StorePorts, folder: string, piece: Piece): Promise<Outcome<void, CreateTag>> =>
  makeFolderWhole(ports, folder, async (temporary) => {
    const text = serialiseDocument(pieceDocument, piece, 1, sha256);
    await ports.files.makeFolder(layout.photos(temporary));
    await ports.files.makeFolder(layout.checks(temporary));
    await keepVersion(ports, temporary, 1, text);
    await writeWhole(ports.files, layout.piece(temporary), [new TextEncoder().encode(text)], ports.token());
    return success(undefined);
  });
