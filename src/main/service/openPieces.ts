import type { OpenedPiece } from '../../core/contract/hostApi.ts';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import { layout } from '../store/layout.ts';
import { type OpenedFolder, openPieceFolder, type PieceHandle } from '../store/pieceHandle.ts';
import { readPiece } from '../store/readPiece.ts';
import { keyOf, type PieceLibrary } from './pieceLibrary.ts';
import type { ServicePorts } from './servicePorts.ts';

const BEAT_MS = 20_000;
const LOOK_MS = 4_000;

interface Entry {
  handle: PieceHandle;
  sample: boolean;
  /** How many pages have it open. */
  pages: number;
  /** `piece.json` as last seen, while another program may be writing it. */
  modifiedMs: number;
  queue: Promise<unknown>;
}

export interface OpenPieces {
  open(folder: string, sample: boolean, takeOver?: boolean): Promise<Outcome<OpenedPiece>>;
  /** Runs work on one piece, one after another; opens it for reading when no page has it open. */
  use<Value>(
    key: string,
    work: (handle: PieceHandle, sample: boolean) => Promise<Outcome<Value>>,
  ): Promise<Outcome<Value>>;
  close(key: string): Promise<void>;
  /** Lets every piece go, however many pages had it open: none of them is there any more. */
  letGoAll(): Promise<void>;
  closeAll(): Promise<void>;
}

const notListed = failure(
  'not-there',
  'That piece is no longer in the list.',
  'Open its folder again, or choose another piece.',
);

export function keepOpenPieces(ports: ServicePorts, library: PieceLibrary): OpenPieces {
  const open = new Map<string, Entry>();

  const asOpened = (key: string, folder: OpenedFolder, sample: boolean): OpenedPiece => ({
    key,
    revision: folder.revision,
    piece: folder.piece,
    progress: folder.progress,
    readOnly: folder.handle.readOnly,
    sample,
  });

  const modified = async (folder: string): Promise<number> =>
    (await ports.store.files.stat(layout.piece(folder)).catch(() => null))?.modifiedMs ?? 0;

  const beats = setInterval(() => {
    for (const entry of open.values()) void entry.handle.lock?.beat().catch(() => undefined);
  }, BEAT_MS);
  const looks = setInterval(async () => {
    for (const [key, entry] of open) {
      if (entry.handle.lock !== null) continue;
      const now = await modified(entry.handle.folder);
      if (now !== entry.modifiedMs) {
        entry.modifiedMs = now;
        ports.tell({ kind: 'piece-changed-elsewhere', key });
      }
    }
  }, LOOK_MS);
  beats.unref();
  looks.unref();

  async function openNow(folder: string, sample: boolean, takeOver: boolean): Promise<Outcome<OpenedPiece>> {
    const key = keyOf(folder);
    const before = open.get(key);
    // Already open here for writing: the same lock serves another page.
    if (before?.handle.lock !== null && before !== undefined && (await before.handle.lock.stillOurs())) {
      const read = await readPiece(ports.store, before.handle.folder);
      if (!read.ok) return read;
      before.pages++;
      return success(asOpened(key, { ...read.value, handle: before.handle }, before.sample));
    }
    const opened = await openPieceFolder(ports.store, folder, ports.owner, takeOver);
    if (!opened.ok) return opened;
    open.set(key, {
      handle: opened.value.handle,
      sample,
      pages: (before?.pages ?? 0) + 1,
      modifiedMs: await modified(folder),
      queue: before?.queue ?? Promise.resolve(),
    });
    await library.remember(folder, sample);
    if (!sample) ports.shell.opened?.(folder);
    return success(asOpened(key, opened.value, sample));
  }

  const inTurn = <Value>(entry: Entry, work: () => Promise<Value>): Promise<Value> => {
    const turn = entry.queue.then(work);
    entry.queue = turn.catch(() => undefined);
    return turn;
  };

  // Opening and closing of all pieces, one after another: two pages opening one piece must not race for its lock.
  let gate: Promise<unknown> = Promise.resolve();
  const atGate = <Value>(work: () => Promise<Value>): Promise<Value> => {
    const turn = gate.then(work);
    gate = turn.catch(() => undefined);
    return turn;
  };

  async function closeNow(key: string): Promise<void> {
    const entry = open.get(key);
    if (entry === undefined) return;
    open.delete(key);
    await inTurn(entry, async () => entry.handle.lock?.release());
  }

  return {
    open: (folder, sample, takeOver = false) => atGate(() => openNow(folder, sample, takeOver)),
    async use(key, work) {
      const entry = open.get(key);
      if (entry !== undefined) return inTurn(entry, () => work(entry.handle, entry.sample));
      const listed = await library.folderOf(key);
      if (listed === null) return notListed;
      const closed =
        'This piece is not open here just now, so it can be looked at but not changed. Open it and try again.';
      return work({ folder: listed.folder, lock: null, readOnly: closed }, listed.sample);
    },
    close: (key) =>
      atGate(async () => {
        const entry = open.get(key);
        if (entry === undefined) return;
        entry.pages--;
        if (entry.pages <= 0) await closeNow(key);
      }),
    letGoAll: () =>
      atGate(async () => {
        for (const key of [...open.keys()]) await closeNow(key);
      }),
    closeAll: () =>
      atGate(async () => {
        clearInterval(beats);
        clearInterval(looks);
        for (const key of [...open.keys()]) await closeNow(key);
      }),
  };
}
