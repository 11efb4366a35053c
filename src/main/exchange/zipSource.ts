import { type Entry, fromBufferPromise, openPromise, type ZipFile } from 'yauzl';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import type { EntrySource, ImportTag, IncomingEntry } from './entrySource.ts';
import { importLimits } from './entrySource.ts';

const options = {
  autoClose: false,
  lazyEntries: true,
  validateEntrySizes: true,
  decodeStrings: true,
  strictFileNames: true,
} as const;

/** Unix file kinds as a zip carries them in the upper half of the external attributes. */
const KIND_MASK = 0o170_000;
const REGULAR = 0o100_000;
const FOLDER = 0o040_000;
const LINK = 0o120_000;

function kindOf(entry: Entry): IncomingEntry['kind'] {
  const madeOnUnix = entry.versionMadeBy >> 8 === 3;
  const kind = madeOnUnix ? (entry.externalFileAttributes >>> 16) & KIND_MASK : 0;
  if (kind === LINK) return 'link';
  if (entry.fileName.endsWith('/')) return kind === 0 || kind === FOLDER ? 'folder' : 'other';
  return kind === 0 || kind === REGULAR ? 'file' : 'other';
}

const unreadable = (thrown: unknown) =>
  failure(
    'zip-unreadable',
    "The file isn't a zip that can be read whole.",
    'Make the zip again where the piece is kept, or copy it once more.',
    thrown instanceof Error ? thrown.message.slice(0, 200) : 'thrown',
  );

/** Opens a zip by path (read in pieces, never whole) or by bytes. */
export async function openZipSource(from: string | Uint8Array): Promise<Outcome<EntrySource, ImportTag>> {
  let zip: ZipFile;
  try {
    zip =
      typeof from === 'string'
        ? await openPromise(from, options)
        : await fromBufferPromise(Buffer.from(from.buffer, from.byteOffset, from.byteLength), options);
  } catch (thrown) {
    return unreadable(thrown);
  }
  // The reader speaks of trouble outside any question, too; the question that was under way gets the answer.
  zip.on('error', () => undefined);
  if (zip.entryCount > importLimits.entries) {
    const count = zip.entryCount;
    zip.close();
    return failure(
      'too-many-entries',
      `The zip holds ${count} files, more than any piece does.`,
      'Choose a zip that Plumbweft made.',
    );
  }
  return success({
    async *entries() {
      try {
        for await (const entry of zip.eachEntry()) {
          if (entry.isEncrypted()) {
            yield failure(
              'zip-unreadable',
              'The zip is locked with a password.',
              'Make it again without one where the piece is kept.',
            );
            return;
          }
          yield success({
            name: entry.fileName,
            kind: kindOf(entry),
            size: entry.uncompressedSize,
            crc: entry.crc32,
            open: () => zip.openReadStreamPromise(entry),
          });
        }
      } catch (thrown) {
        const message = thrown instanceof Error ? thrown.message : '';
        yield /relative path|absolute path|invalid characters/i.test(message)
          ? failure(
              'unsafe-entry',
              'The zip holds a name that leads outside the piece, so nothing was brought in.',
              'Choose a zip that Plumbweft made.',
              message.slice(0, 120),
            )
          : unreadable(thrown);
      }
    },
    close: () => zip.close(),
  });
}
