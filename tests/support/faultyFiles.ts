import type { FileLayer } from '../../src/main/files/fileLayer.ts';

/** Calls that change something, or make a change safe: the ones whose failing matters. */
const watched = ['create', 'write', 'flush', 'close', 'rename', 'link', 'remove', 'makeFolder', 'flushFolder'] as const;
export type WatchedCall = (typeof watched)[number];

export interface Fault {
  /** Which watched call fails, counted from 0. */
  readonly at: number;
  /** The system's code, for example `EIO`. */
  readonly code: string;
  /** Whether every later call fails too, as on a disk that has gone. */
  readonly andAfter: boolean;
}

const thrown = (code: string): NodeJS.ErrnoException => Object.assign(new Error(`${code}: made to fail`), { code });

/** The given layer, with one call made to fail. `calls` names the watched calls made so far. */
export function failingFiles(files: FileLayer, fault: Fault | null): FileLayer & { readonly calls: WatchedCall[] } {
  const calls: WatchedCall[] = [];
  const pass = (call: WatchedCall): void => {
    const index = calls.push(call) - 1;
    if (fault !== null && (index === fault.at || (fault.andAfter && index > fault.at))) throw thrown(fault.code);
  };
  return {
    ...files,
    calls,
    async create(path) {
      pass('create');
      const file = await files.create(path);
      return {
        async write(bytes) {
          pass('write');
          await file.write(bytes);
        },
        async flush() {
          pass('flush');
          await file.flush();
        },
        async close() {
          // Closing always lets go, even when it says something failed.
          await file.close();
          pass('close');
        },
      };
    },
    async rename(from, to) {
      pass('rename');
      await files.rename(from, to);
    },
    async link(existing, path) {
      pass('link');
      await files.link(existing, path);
    },
    async remove(path) {
      pass('remove');
      await files.remove(path);
    },
    async makeFolder(path) {
      pass('makeFolder');
      await files.makeFolder(path);
    },
    async flushFolder(path) {
      pass('flushFolder');
      await files.flushFolder(path);
    },
  };
}

/** The given layer on a disk with room for so many bytes: what fits of a write is written, then `ENOSPC`. */
export function fullFiles(files: FileLayer, room: number): FileLayer {
  let left = room;
  return {
    ...files,
    async create(path) {
      const file = await files.create(path);
      return {
        ...file,
        async write(bytes) {
          const fits = Math.min(left, bytes.length);
          if (fits > 0) await file.write(bytes.subarray(0, fits));
          left -= fits;
          if (fits < bytes.length) throw thrown('ENOSPC');
        },
        flush: () => file.flush(),
        close: () => file.close(),
      };
    },
  };
}
