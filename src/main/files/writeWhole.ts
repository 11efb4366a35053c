import { basename, dirname, join } from 'node:path';
import type { FileLayer } from './fileLayer.ts';

/** Files being written end so; one found while nobody writes is a leftover. */
export const PART_ENDING = '.part';

/**
 * Writes a file so that a reader sees either the complete old one or the complete new one: a new file beside the
 * target, flushed, renamed over it, and the folder's names flushed. When anything fails the target is as it was
 * (or, if only the last flush failed, as it should be) and the error is thrown.
 * @param token makes the temporary name unlike any other.
 */
export async function writeWhole(
  files: FileLayer,
  path: string,
  pieces: Iterable<Uint8Array> | AsyncIterable<Uint8Array>,
  token: string,
): Promise<void> {
  const folder = dirname(path);
  const temporary = join(folder, `.${basename(path)}.${token}${PART_ENDING}`);
  const file = await files.create(temporary);
  try {
    try {
      for await (const piece of pieces) await file.write(piece);
      await file.flush();
    } finally {
      await file.close();
    }
    await files.rename(temporary, path);
  } catch (thrown) {
    await files.remove(temporary).catch(() => undefined);
    throw thrown;
  }
  await files.flushFolder(folder);
}
