import type { OpenedPiece } from '../../core/contract/hostApi.ts';
import { failure, type Outcome } from '../../core/model/outcome.ts';
import type { Piece } from '../../core/model/piece.ts';
import { exportPiece } from '../exchange/exportPiece.ts';
import { importPiece } from '../exchange/importPiece.ts';
import { openZipSource } from '../exchange/zipSource.ts';
import { fileProblem } from '../files/fileProblem.ts';
import { createPiece } from '../store/createPiece.ts';
import { readPiece } from '../store/readPiece.ts';
import { savePiece, saveProgress } from '../store/savePiece.ts';
import { ensureTree } from './ensureTree.ts';
import { answer, type Handlers } from './handlerTypes.ts';
import { PACKED_ENDING, withoutEnding } from './openGiven.ts';
import type { OpenPieces } from './openPieces.ts';
import { folderName, freeFolder, type PieceLibrary } from './pieceLibrary.ts';
import { copySample } from './sample.ts';
import type { ServicePorts } from './servicePorts.ts';
import { writeZip } from './writeZip.ts';

/** Largest zip handed to a page in one answer; larger pieces go straight to a file. */
const PAGE_ZIP_LIMIT = 512 * 1024 * 1024;

type Names =
  | 'recentPieces'
  | 'createPiece'
  | 'openPiece'
  | 'openSample'
  | 'choosePieceFolder'
  | 'duplicatePiece'
  | 'closePiece'
  | 'forgetPiece'
  | 'savePiece'
  | 'saveProgress'
  | 'exportPiece'
  | 'importPiece'
  | 'takeOverPiece'
  | 'revealPiece';

/** Calls that open, keep, copy and carry pieces. */
export function pieceHandlers(ports: ServicePorts, library: PieceLibrary, pieces: OpenPieces): Handlers<Names> {
  const { store, shell, places } = ports;

  const opened = (outcome: Outcome<OpenedPiece>) => (outcome.ok ? answer(outcome.value) : outcome);

  async function create(piece: Piece): Promise<Outcome<OpenedPiece>> {
    try {
      await ensureTree(places.pieces);
    } catch (thrown) {
      return fileProblem(thrown, 'making the piece');
    }
    const folder = await freeFolder(ports, piece.name);
    const made = await createPiece(store, folder, piece);
    return made.ok ? pieces.open(folder, false) : made;
  }

  const listed = async (key: string) =>
    (await library.folderOf(key)) ??
    failure('not-there', 'That piece is no longer in the list.', 'Open its folder again, or choose another piece.');

  return {
    recentPieces: async () => answer(await library.recent()),
    createPiece: async ({ piece }) => opened(await create(piece)),
    async openPiece({ key }) {
      const found = await listed(key);
      return 'problem' in found ? found : opened(await pieces.open(found.folder, found.sample));
    },
    async openSample() {
      for (const recent of await library.recent()) {
        const found = recent.available ? await library.folderOf(recent.key) : null;
        if (found?.sample) return opened(await pieces.open(found.folder, true));
      }
      const copied = await copySample(ports);
      return copied.ok ? opened(await pieces.open(copied.value, true)) : copied;
    },
    async choosePieceFolder() {
      if (shell.chooseFolder === null) {
        return failure(
          'no-dialog',
          "In the browser a folder can't be chosen.",
          `Put the piece's folder into the folder "${folderName('Plumbweft')}" of your documents, or bring it in as a zip.`,
        );
      }
      const folder = await shell.chooseFolder();
      if (folder === null) return answer(null);
      return opened(await pieces.open(folder, false));
    },
    duplicatePiece: ({ key, name }) =>
      pieces.use(key, async (handle) => {
        const read = await readPiece(store, handle.folder);
        if (!read.ok) return read;
        const now = store.now().toISOString();
        return opened(await create({ ...read.value.piece, name, created: now, changed: now }));
      }),
    async closePiece({ key }) {
      await pieces.close(key);
      return answer({});
    },
    async forgetPiece({ key }) {
      await pieces.close(key);
      await library.forget(key);
      return answer({});
    },
    savePiece: ({ key, revision, piece }) =>
      pieces.use(key, async (handle) => {
        const saved = await savePiece(store, handle, revision, piece);
        return saved.ok ? answer({ revision: saved.value }) : saved;
      }),
    saveProgress: ({ key, progress }) =>
      pieces.use(key, async (handle) => {
        const saved = await saveProgress(store, handle, progress);
        return saved.ok ? answer({}) : saved;
      }),
    exportPiece: ({ key, keepPlaces }) =>
      pieces.use(key, async (handle) => {
        const read = await readPiece(store, handle.folder);
        if (!read.ok) return read;
        // Where there is a window of our own, the packed piece opens it; a browser's download is a plain zip.
        const ending = shell.chooseSaveFile === null ? '.zip' : PACKED_ENDING;
        const name = `${folderName(read.value.piece.name)}${ending}`;
        const zip = exportPiece(store, handle.folder, { keepPlaces });
        if (shell.chooseSaveFile !== null) {
          const path = await shell.chooseSaveFile(name);
          if (path === null) return answer({ name: '' });
          const written = await writeZip(ports, path, zip);
          return written.ok ? answer({ name }) : written;
        }
        return collect(name, zip);
      }),
    async importPiece({ name }, bytes) {
      if (bytes === null) {
        return failure('zip-unreadable', 'No zip came along.', 'Choose the zip again.');
      }
      const source = await openZipSource(bytes);
      if (!source.ok) return source;
      try {
        await ensureTree(places.pieces);
      } catch (thrown) {
        return fileProblem(thrown, 'bringing the piece in');
      }
      const folder = await freeFolder(ports, withoutEnding(name));
      const brought = await importPiece(store, source.value, folder);
      return brought.ok ? opened(await pieces.open(folder, false)) : brought;
    },
    async takeOverPiece({ key }) {
      const found = await listed(key);
      return 'problem' in found ? found : opened(await pieces.open(found.folder, found.sample, true));
    },
    async revealPiece({ key }) {
      const found = await listed(key);
      if ('problem' in found) return found;
      shell.reveal?.(found.folder);
      return answer({ path: found.folder });
    },
  };
}

async function collect(name: string, zip: ReturnType<typeof exportPiece>) {
  const parts: Uint8Array[] = [];
  let size = 0;
  for (;;) {
    const next = await zip.next();
    if (next.done === true) {
      if (!next.value.ok) return next.value;
      const whole = new Uint8Array(size);
      let at = 0;
      for (const part of parts) {
        whole.set(part, at);
        at += part.length;
      }
      return answer({ name }, whole);
    }
    size += next.value.length;
    if (size > PAGE_ZIP_LIMIT) {
      return failure(
        'too-big',
        'The piece is too large to be handed over by the browser.',
        'Export it with "npm run -s plumbweft -- export DIR FILE.zip".',
      );
    }
    parts.push(next.value);
  }
}
