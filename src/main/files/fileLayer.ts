/** A file being written: bytes go in order, `flush` puts them on the disk, `close` lets go. */
export interface WritingFile {
  write(bytes: Uint8Array): Promise<void>;
  flush(): Promise<void>;
  close(): Promise<void>;
}

export interface FileStat {
  readonly kind: 'file' | 'folder' | 'link' | 'other';
  readonly size: number;
  readonly modifiedMs: number;
}

/**
 * The few calls the store makes on a disk. Everything the store writes goes through this, so that tests can make any
 * one of them fail, or record them and replay what a power cut would leave. All of them throw `ErrnoException`s.
 */
export interface FileLayer {
  /** Whole file; throws `EFBIG` beyond `limit` bytes. */
  read(path: string, limit: number): Promise<Uint8Array>;
  /** Pieces of a file in order, for what is too large to hold. */
  readPieces(path: string): AsyncIterable<Uint8Array>;
  /** A new file; throws `EEXIST` when there is one. */
  create(path: string): Promise<WritingFile>;
  rename(from: string, to: string): Promise<void>;
  /** Gives a file a second, new name; throws `EEXIST` when that is taken, `EPERM` or `ENOTSUP` where disks can't. */
  link(existing: string, path: string): Promise<void>;
  remove(path: string): Promise<void>;
  /** A new folder; throws `EEXIST` when there is one. */
  makeFolder(path: string): Promise<void>;
  removeFolder(path: string): Promise<void>;
  /** Puts a folder's names on the disk. */
  flushFolder(path: string): Promise<void>;
  list(path: string): Promise<readonly string[]>;
  /** Of the name itself, links not followed; null when there is nothing. */
  stat(path: string): Promise<FileStat | null>;
  /** Marks a file as changed now: the beat of a lock. */
  touch(path: string, at: Date): Promise<void>;
}
