import { basename, join, resolve } from 'node:path';
import type { RecentPiece } from '../../core/contract/hostApi.ts';
import { sha256 } from '../files/sha256.ts';
import { checkIds } from '../store/checkStore.ts';
import { layout } from '../store/layout.ts';
import { readPiece } from '../store/readPiece.ts';
import { type Library, readLibrary, writeLibrary } from './ownDocuments.ts';
import type { ServicePorts } from './servicePorts.ts';

/** A piece's name across the contract: drawn from its folder, so that it is the same in every shell. */
export const keyOf = (folder: string): string => `p-${sha256(resolve(folder)).slice(0, 24)}`;

const PIECES_LISTED = 300;

/** The list of pieces: those opened before, and whatever lies in the usual folder. */
export interface PieceLibrary {
  recent(): Promise<RecentPiece[]>;
  folderOf(key: string): Promise<{ readonly folder: string; readonly sample: boolean } | null>;
  remember(folder: string, sample: boolean): Promise<void>;
  forget(key: string): Promise<void>;
}

type Entry = Library['pieces'][number];

export function openPieceLibrary(ports: ServicePorts): PieceLibrary {
  const { files, now } = ports.store;

  async function entries(): Promise<Entry[]> {
    const { pieces } = await readLibrary(ports);
    const known = new Set(pieces.map((entry) => resolve(entry.folder)));
    const found: Entry[] = [...pieces];
    for (const name of await files.list(ports.places.pieces).catch(() => [] as readonly string[])) {
      const folder = resolve(ports.places.pieces, name);
      if (name.startsWith('.') || known.has(folder)) continue;
      const stat = await files.stat(layout.piece(folder)).catch(() => null);
      if (stat?.kind !== 'file') continue;
      found.push({ folder, opened: new Date(stat.modifiedMs).toISOString(), sample: false, forgotten: false });
    }
    return found.sort((a, b) => b.opened.localeCompare(a.opened));
  }

  // One change at a time, each on what the last one left.
  let queue: Promise<unknown> = Promise.resolve();
  const change = (edit: (pieces: readonly Entry[]) => Entry[]): Promise<void> => {
    const turn = queue.then(async () => {
      const { pieces } = await readLibrary(ports);
      const written = await writeLibrary(ports, { pieces: edit(pieces).slice(0, 5_000) });
      if (!written.ok) ports.log.write('problem', `${written.problem.tag}: ${written.problem.sentence}`);
    });
    queue = turn.catch(() => undefined);
    return turn;
  };

  return {
    async recent() {
      const listed: RecentPiece[] = [];
      for (const entry of await entries()) {
        if (entry.forgotten || listed.length >= PIECES_LISTED) continue;
        const read = await readPiece(ports.store, entry.folder);
        const checks = read.ok ? (await checkIds(ports.store, entry.folder)).length : 0;
        listed.push({
          key: keyOf(entry.folder),
          name: read.ok ? read.value.piece.name : basename(entry.folder),
          folder: basename(entry.folder),
          changed: read.ok ? read.value.piece.changed : entry.opened,
          checks,
          available: read.ok,
        });
      }
      return listed;
    },
    async folderOf(key) {
      const entry = (await entries()).find((candidate) => keyOf(candidate.folder) === key);
      return entry === undefined ? null : { folder: resolve(entry.folder), sample: entry.sample };
    },
    remember(folder, sample) {
      const full = resolve(folder);
      return change((pieces) => {
        const before = pieces.find((entry) => resolve(entry.folder) === full);
        const rest = pieces.filter((entry) => resolve(entry.folder) !== full);
        const entry = { folder: full, opened: now().toISOString(), sample: sample || (before?.sample ?? false) };
        return [{ ...entry, forgotten: false }, ...rest];
      });
    },
    async forget(key) {
      const found = await this.folderOf(key);
      if (found === null) return;
      await change((pieces) => {
        const rest = pieces.filter((entry) => resolve(entry.folder) !== found.folder);
        return [{ folder: found.folder, opened: now().toISOString(), sample: found.sample, forgotten: true }, ...rest];
      });
    },
  };
}

/** A folder name made from a piece's name: letters, digits and hyphens, free of names that systems keep for devices. */
export function folderName(name: string): string {
  const plain = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  const reserved = /^(con|prn|aux|nul|com\d|lpt\d)$/i.test(plain);
  return plain === '' || reserved ? `piece-${plain}`.replace(/-$/, '') : plain;
}

/** A folder that isn't there yet, in the usual place. */
export async function freeFolder(ports: ServicePorts, name: string): Promise<string> {
  const base = folderName(name);
  for (let count = 1; count < 1_000; count++) {
    const folder = join(ports.places.pieces, count === 1 ? base : `${base}-${count}`);
    if ((await ports.store.files.stat(folder)) === null) return folder;
  }
  return join(ports.places.pieces, `${base}-${ports.store.token()}`);
}
