import { createReadStream } from 'node:fs';
import { link, lstat, mkdir, open, readdir, rename, rmdir, unlink, utimes } from 'node:fs/promises';
import type { FileLayer } from './fileLayer.ts';

const tooBig = (path: string): NodeJS.ErrnoException =>
  Object.assign(new Error(`EFBIG: larger than allowed, read '${path}'`), { code: 'EFBIG' });

/** The real disk. */
export const nodeFiles: FileLayer = {
  async read(path, limit) {
    const handle = await open(path, 'r');
    try {
      const { size } = await handle.stat();
      if (size > limit) throw tooBig(path);
      const bytes = new Uint8Array(size);
      let filled = 0;
      while (filled < size) {
        const { bytesRead } = await handle.read(bytes, filled, size - filled, filled);
        if (bytesRead === 0) break;
        filled += bytesRead;
      }
      return filled === size ? bytes : bytes.slice(0, filled);
    } finally {
      await handle.close();
    }
  },
  async *readPieces(path) {
    for await (const piece of createReadStream(path, { highWaterMark: 1 << 20 })) yield piece as Uint8Array;
  },
  async create(path) {
    const handle = await open(path, 'wx', 0o644);
    return {
      async write(bytes) {
        let written = 0;
        while (written < bytes.length) {
          const { bytesWritten } = await handle.write(bytes, written, bytes.length - written);
          written += bytesWritten;
        }
      },
      flush: () => handle.sync(),
      close: () => handle.close(),
    };
  },
  rename: (from, to) => rename(from, to),
  link: (existing, path) => link(existing, path),
  remove: (path) => unlink(path),
  async makeFolder(path) {
    await mkdir(path);
  },
  removeFolder: (path) => rmdir(path),
  async flushFolder(path) {
    // Windows has no way to open a folder for flushing; its file system keeps names in its own journal.
    if (process.platform === 'win32') return;
    const handle = await open(path, 'r');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  },
  list: (path) => readdir(path),
  async stat(path) {
    try {
      const found = await lstat(path);
      const kind = found.isFile() ? 'file' : found.isDirectory() ? 'folder' : found.isSymbolicLink() ? 'link' : 'other';
      return { kind, size: found.size, modifiedMs: found.mtimeMs };
    } catch (thrown) {
      const code = (thrown as NodeJS.ErrnoException).code;
      if (code === 'ENOENT' || code === 'ENOTDIR') return null;
      throw thrown;
    }
  },
  touch: (path, at) => utimes(path, at, at),
};
