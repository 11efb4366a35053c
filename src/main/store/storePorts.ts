import type { FileLayer } from '../files/fileLayer.ts';

/** What the store needs from outside: the disk, the time, and names nobody else has. */
export interface StorePorts {
  readonly files: FileLayer;
  readonly now: () => Date;
  /** A fresh random name of lower-case letters and digits. */
  readonly token: () => string;
}
