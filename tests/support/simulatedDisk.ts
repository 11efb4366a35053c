import { basename, dirname, join } from 'node:path';
import type { FileLayer, FileStat } from '../../src/main/files/fileLayer.ts';

/**
 * A disk in memory that knows what a power cut may leave. A file's writes are safe once it was flushed; a folder's
 * names (made, renamed, linked, removed) are safe once the folder was flushed. Until then any subset of them may be
 * lost, in whatever order: that is what POSIX promises, and no more.
 */
type Inode =
  | { readonly kind: 'file'; safe: Uint8Array; pending: Uint8Array[] }
  | { readonly kind: 'folder'; safe: Map<string, Inode>; pending: NameChange[] };
type Folder = Extract<Inode, { kind: 'folder' }>;
type File = Extract<Inode, { kind: 'file' }>;
/** One change of a folder's names; a null takes the name away. A rename within a folder changes two at once. */
type NameChange = ReadonlyMap<string, Inode | null>;

const trouble = (code: string, path: string): NodeJS.ErrnoException =>
  Object.assign(new Error(`${code}: ${path}`), { code });

const emptyFolder = (): Folder => ({ kind: 'folder', safe: new Map(), pending: [] });

function applied(safe: ReadonlyMap<string, Inode>, changes: readonly NameChange[]): Map<string, Inode> {
  const names = new Map(safe);
  for (const change of changes) {
    for (const [name, inode] of change) {
      if (inode === null) names.delete(name);
      else names.set(name, inode);
    }
  }
  return names;
}

const joined = (parts: readonly Uint8Array[]): Uint8Array => {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
};

export interface SimulatedDisk {
  readonly files: FileLayer;
  /** Called after every change: the moments at which the power may go. */
  onChange: () => void;
  /** Every disk a power cut at this moment may leave, up to `most` of them (then a fixed sample of the rest). */
  afterPowerCut(most: number): Generator<FileLayer>;
}

export interface Carelessness {
  /** Pretends to flush files: proves that the test sees what an unflushed write does. */
  readonly noFileFlush?: boolean;
  readonly noFolderFlush?: boolean;
}

/** A file's end besides every subset of its writes: the last ones torn half-way, or the right length of zeros. */
const OTHER_ENDS = 2;

const greatestCommon = (a: number, b: number): number => (b === 0 ? a : greatestCommon(b, a % b));

/** What a file holds for one choice: bit n of a choice below `2 ** writes` says whether write n got to the disk. */
function endOf(file: File, choice: number): Uint8Array {
  const whole = joined([file.safe, ...file.pending]);
  const subsets = 2 ** file.pending.length;
  const from = file.safe.length;
  if (choice === subsets) return whole.slice(0, from + Math.floor((whole.length - from) / 2));
  const left = new Uint8Array(whole.length);
  left.set(file.safe);
  if (choice === subsets + 1) return left;
  let at = from;
  let end = from;
  // A write that is lost before one that isn't leaves a hole, which reads as zeros.
  file.pending.forEach((write, index) => {
    if (((choice >> index) & 1) === 1) {
      left.set(write, at);
      end = at + write.length;
    }
    at += write.length;
  });
  return left.slice(0, end);
}

export function simulatedDisk(root: Folder = emptyFolder(), careless: Carelessness = {}): SimulatedDisk {
  const disk: SimulatedDisk = {
    files: layerOver(root, careless, () => disk.onChange()),
    onChange: () => undefined,
    afterPowerCut,
  };

  function* afterPowerCut(most: number): Generator<FileLayer> {
    // Every place where something isn't safe yet, with how many ways it can end.
    const folders: Folder[] = [];
    const files: File[] = [];
    const seen = new Set<Inode>();
    const visit = (inode: Inode) => {
      if (seen.has(inode)) return;
      seen.add(inode);
      if (inode.kind === 'file') {
        if (inode.pending.length > 0) files.push(inode);
        return;
      }
      if (inode.pending.length > 0) folders.push(inode);
      for (const inner of inode.safe.values()) visit(inner);
      for (const change of inode.pending) for (const inner of change.values()) if (inner !== null) visit(inner);
    };
    visit(root);
    const ways = [
      ...folders.map((folder) => 2 ** folder.pending.length),
      ...files.map((file) => 2 ** file.pending.length + OTHER_ENDS),
    ];
    const all = ways.reduce((product, count) => product * count, 1);
    // A sample takes steps that share no factor with any count of ways, or some ends would never be looked at.
    let step = Math.max(1, Math.floor(all / most));
    while (greatestCommon(step, all) > 1) step++;
    for (let choice = 0; choice < all; choice += step) {
      let rest = choice;
      const chosen = ways.map((count) => {
        const pick = rest % count;
        rest = Math.floor(rest / count);
        return pick;
      });
      const folderPick = new Map(folders.map((folder, index) => [folder, chosen[index]!]));
      const filePick = new Map(files.map((file, index) => [file, chosen[folders.length + index]!]));
      yield layerOver(survived(root, folderPick, filePick) as Folder, {}, () => undefined, STARTING_MS);
    }
  }
  return disk;
}

/** What is left of an inode for one choice of what got lost. */
function survived(
  inode: Inode,
  folderPick: ReadonlyMap<Folder, number>,
  filePick: ReadonlyMap<File, number>,
  made = new Map<Inode, Inode>(),
): Inode {
  const before = made.get(inode);
  if (before !== undefined) return before;
  if (inode.kind === 'file') {
    const pick = filePick.get(inode);
    const left = pick === undefined ? inode.safe : endOf(inode, pick);
    const copy: Inode = { kind: 'file', safe: left, pending: [] };
    made.set(inode, copy);
    return copy;
  }
  const copy: Folder = emptyFolder();
  made.set(inode, copy);
  const pick = folderPick.get(inode) ?? 0;
  const kept = inode.pending.filter((_, index) => ((pick >> index) & 1) === 1);
  for (const [name, inner] of applied(inode.safe, kept))
    copy.safe.set(name, survived(inner, folderPick, filePick, made));
  return copy;
}

/** After a power cut the computer starts anew: long enough for a lock that was torn to count as left behind. */
const STARTING_MS = 20_000;

/** @param tickMs passes between two looks at a file's time. */
function layerOver(root: Folder, careless: Carelessness, changed: () => void, tickMs = 1): FileLayer {
  let clock = Date.UTC(2026, 10, 25);
  const namesOf = (folder: Folder) => applied(folder.safe, folder.pending);
  const find = (path: string): Inode | null => {
    let at: Inode = root;
    for (const part of path.split('/').filter(Boolean)) {
      if (at.kind !== 'folder') return null;
      const next: Inode | undefined = namesOf(at).get(part);
      if (next === undefined) return null;
      at = next;
    }
    return at;
  };
  const folderAt = (path: string): Folder => {
    const found = find(path);
    if (found?.kind !== 'folder') throw trouble('ENOENT', path);
    return found;
  };
  const change = (folder: Folder, names: NameChange) => {
    folder.pending.push(names);
    changed();
  };
  const contents = (path: string): Uint8Array => {
    const found = find(path);
    if (found?.kind !== 'file') throw trouble('ENOENT', path);
    return joined([found.safe, ...found.pending]);
  };

  return {
    async read(path, limit) {
      const bytes = contents(path);
      if (bytes.length > limit) throw trouble('EFBIG', path);
      return bytes;
    },
    async *readPieces(path) {
      yield contents(path);
    },
    async create(path) {
      const folder = folderAt(dirname(path));
      if (namesOf(folder).has(basename(path))) throw trouble('EEXIST', path);
      const file: File = { kind: 'file', safe: new Uint8Array(), pending: [] };
      change(folder, new Map([[basename(path), file]]));
      return {
        async write(bytes) {
          file.pending.push(new Uint8Array(bytes));
          changed();
        },
        async flush() {
          if (careless.noFileFlush) return;
          file.safe = joined([file.safe, ...file.pending]);
          file.pending = [];
          changed();
        },
        close: async () => undefined,
      };
    },
    async rename(from, to) {
      const source = folderAt(dirname(from));
      const target = folderAt(dirname(to));
      const inode = namesOf(source).get(basename(from));
      if (inode === undefined) throw trouble('ENOENT', from);
      if (source === target) {
        change(
          source,
          new Map<string, Inode | null>([
            [basename(from), null],
            [basename(to), inode],
          ]),
        );
      } else {
        change(target, new Map([[basename(to), inode]]));
        change(source, new Map([[basename(from), null]]));
      }
    },
    async link(existing, path) {
      const inode = find(existing);
      if (inode === null) throw trouble('ENOENT', existing);
      const folder = folderAt(dirname(path));
      if (namesOf(folder).has(basename(path))) throw trouble('EEXIST', path);
      change(folder, new Map([[basename(path), inode]]));
    },
    async remove(path) {
      if (find(path) === null) throw trouble('ENOENT', path);
      change(folderAt(dirname(path)), new Map([[basename(path), null]]));
    },
    async makeFolder(path) {
      const folder = folderAt(dirname(path));
      if (namesOf(folder).has(basename(path))) throw trouble('EEXIST', path);
      change(folder, new Map([[basename(path), emptyFolder()]]));
    },
    async removeFolder(path) {
      if (namesOf(folderAt(path)).size > 0) throw trouble('ENOTEMPTY', path);
      change(folderAt(dirname(path)), new Map([[basename(path), null]]));
    },
    async flushFolder(path) {
      if (careless.noFolderFlush) return;
      const folder = folderAt(path);
      folder.safe = namesOf(folder);
      folder.pending = [];
      changed();
    },
    list: async (path) => [...namesOf(folderAt(path)).keys()],
    async stat(path): Promise<FileStat | null> {
      const found = find(path);
      if (found === null) return null;
      const size = found.kind === 'file' ? joined([found.safe, ...found.pending]).length : 0;
      clock += tickMs;
      return { kind: found.kind, size, modifiedMs: clock };
    },
    touch: async () => undefined,
  };
}

/** Lists everything on a disk, folders with a slash: for messages of a failing test. */
export async function everything(files: FileLayer, folder = '/'): Promise<string[]> {
  const names: string[] = [];
  for (const name of await files.list(folder)) {
    const path = join(folder, name);
    if ((await files.stat(path))?.kind === 'folder') names.push(`${path}/`, ...(await everything(files, path)));
    else names.push(path);
  }
  return names;
}
