import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import type { Piece } from '../../core/model/piece.ts';
import type { Progress } from '../../core/model/progress.ts';
import { type DocumentTag, glimpseNewerDocument } from '../../core/project/document.ts';
import { pieceDocument } from '../../core/project/pieceDocument.ts';
import { progressDocument } from '../../core/project/progressDocument.ts';
import { type FileTag, fileProblem } from '../files/fileProblem.ts';
import { DOCUMENT_LIMIT, layout } from './layout.ts';
import { readDocument, textOf } from './readDocument.ts';
import type { StorePorts } from './storePorts.ts';

export interface ReadPiece {
  readonly piece: Piece;
  readonly revision: number;
  readonly progress: Progress | null;
  /** Why it may only be looked at, when that lies in the files themselves; null when it doesn't. */
  readonly readOnly: string | null;
}

export type ReadPieceTag = DocumentTag | FileTag | 'not-a-piece';

/** Reads a piece folder; nothing in it is touched. A piece from a newer version can be looked at where it still fits. */
export async function readPiece(ports: StorePorts, folder: string): Promise<Outcome<ReadPiece, ReadPieceTag>> {
  try {
    const stat = await ports.files.stat(layout.piece(folder));
    if (stat === null || stat.kind !== 'file') {
      return failure(
        'not-a-piece',
        'There is no piece in this folder.',
        'Choose a folder that holds a piece.json, or make a new piece.',
      );
    }
  } catch (thrown) {
    return fileProblem(thrown, 'opening the piece');
  }
  const read = await readDocument(ports, pieceDocument, layout.piece(folder));
  if (!read.ok) {
    if (read.problem.tag !== 'too-new') return read;
    try {
      const text = textOf(await ports.files.read(layout.piece(folder), DOCUMENT_LIMIT));
      const glimpse = glimpseNewerDocument(pieceDocument, text);
      if (glimpse === null) return read;
      const missing =
        glimpse.leftOut.length === 0
          ? ''
          : ` Not shown, because this Plumbweft doesn't know it: ${glimpse.leftOut.slice(0, 5).join(', ')}.`;
      return success({
        piece: glimpse.body,
        revision: glimpse.revision,
        progress: null,
        readOnly: `This piece was kept by a newer Plumbweft. It can be looked at, not changed.${missing}`,
      });
    } catch (thrown) {
      return fileProblem(thrown, 'opening the piece');
    }
  }
  const progress = await readProgress(ports, folder);
  if (!progress.ok) return progress;
  return success({
    piece: read.value.body,
    revision: read.value.revision,
    progress: progress.value,
    readOnly: null,
  });
}

/** Where the weaver is; null when nothing is woven yet. */
export async function readProgress(
  ports: StorePorts,
  folder: string,
): Promise<Outcome<Progress | null, DocumentTag | FileTag>> {
  try {
    if ((await ports.files.stat(layout.progress(folder))) === null) return success(null);
  } catch (thrown) {
    return fileProblem(thrown, 'opening the piece');
  }
  const read = await readDocument(ports, progressDocument, layout.progress(folder));
  return read.ok ? success(read.value.body) : read;
}
