import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** What stands before the fuses in every Electron binary, so that they can be found. */
export const FUSE_MARK = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';

/** A file with fuses as Electron's binary has them: mark, version 1, how many, then one digit each. */
export const standInBinary = (fuses: string): Buffer =>
  Buffer.concat([
    Buffer.from(`#!/bin/sh\nexit 1\n${'x'.repeat(500)}`),
    Buffer.from(FUSE_MARK),
    Buffer.from([1, fuses.length]),
    Buffer.from(fuses),
    Buffer.alloc(200, 0x90),
  ]);

/** The fuses of such a file, as they stand in it. */
export function fusesOf(binary: Uint8Array): string {
  const bytes = Buffer.from(binary);
  const at = bytes.indexOf(FUSE_MARK) + FUSE_MARK.length;
  return bytes.subarray(at + 2, at + 2 + bytes[at + 1]!).toString('latin1');
}

/** A folder laid out as an unpacked Electron for Linux, where the real one can't be had. It can be packed, not run. */
export function makeStandInRuntime(folder: string, fuses: string): void {
  mkdirSync(join(folder, 'resources'), { recursive: true });
  writeFileSync(join(folder, 'electron'), standInBinary(fuses), { mode: 0o755 });
  writeFileSync(join(folder, 'LICENSE'), 'stand-in');
  writeFileSync(join(folder, 'LICENSES.chromium.html'), 'stand-in');
}
