import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { PassThrough, Readable } from 'node:stream';
import { ZipFile } from 'yazl';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import { checkDocument } from '../../core/project/checkDocument.ts';
import { serialiseDocument } from '../../core/project/document.ts';
import { type FileTag, fileProblem } from '../files/fileProblem.ts';
import { sha256 } from '../files/sha256.ts';
import { checkIds, readCheck } from '../store/checkStore.ts';
import { layout, PHOTO_NAME } from '../store/layout.ts';
import { photoNames, readPhoto } from '../store/photoStore.ts';
import { readPiece } from '../store/readPiece.ts';
import type { StorePorts } from '../store/storePorts.ts';
import { stripMetadata } from './stripMetadata.ts';

export type ExportTag = 'cannot-strip' | 'piece-damaged' | FileTag;

/** A zip's own time stamps say nothing: the same piece packs to the same bytes. */
const MTIME = new Date(Date.UTC(2020, 0, 1, 12));

export interface ExportOptions {
  /** Keeps what photographs say of where they were taken. */
  readonly keepPlaces: boolean;
}

/** A piece as one zip, its bytes in order as they are made; memory stays at about one photograph. */
export async function* exportPiece(
  ports: StorePorts,
  folder: string,
  { keepPlaces }: ExportOptions,
): AsyncGenerator<Uint8Array, Outcome<void, ExportTag>> {
  const piece = await readPiece(ports, folder);
  if (!piece.ok) return failure('piece-damaged', piece.problem.sentence, piece.problem.remedy, piece.problem.tag);
  const zip = new ZipFile();
  const out = zip.outputStream.pipe(new PassThrough({ highWaterMark: 1 << 20 }));
  let problem: Outcome<never, ExportTag> | null = null;
  const fail = (outcome: Outcome<never, ExportTag>) => {
    problem ??= outcome;
    out.destroy();
  };
  zip.on('error', (thrown) => fail(fileProblem(thrown, 'exporting the piece')));
  // One file after another: the next is only opened when the one before is through.
  const feed = async () => {
    for (const name of ['piece.json', 'progress.json']) {
      if ((await ports.files.stat(join(folder, name))) === null) continue;
      await addStream(zip, name, true, () => Readable.from(ports.files.readPieces(join(folder, name))));
    }
    /** Old hash to new, for photographs whose bytes change because a place was taken out. */
    const renamed = new Map<string, string>();
    const packed = new Set<string>();
    for (const name of await photoNames(ports, folder)) {
      const [, hash, ending] = PHOTO_NAME.exec(name)!;
      const at = `photos/${hash}.${ending}`;
      if (keepPlaces) {
        let whole = true;
        await addStream(zip, at, false, () =>
          Readable.from(provedPieces(ports, join(layout.photos(folder), name), hash!, () => (whole = false))),
        );
        if (!whole) return fail(failure('piece-damaged', ...photoDamaged, hash!.slice(0, 12)));
        continue;
      }
      const bytes = await readPhoto(ports, folder, hash!);
      if (!bytes.ok) {
        return fail(failure('piece-damaged', bytes.problem.sentence, bytes.problem.remedy, bytes.problem.detail));
      }
      const stripped = await stripMetadata(bytes.value);
      if (!stripped.ok) return fail(stripped);
      const clean = sha256(stripped.value);
      renamed.set(hash!, clean);
      // Two photographs that differed in their metadata alone have become one.
      if (packed.has(clean)) continue;
      packed.add(clean);
      await addStream(zip, `photos/${clean}.${ending}`, false, () => Readable.from(slices(stripped.value)));
    }
    for (const id of await checkIds(ports, folder)) {
      const check = await readCheck(ports, folder, id);
      if (!check.ok) {
        return fail(failure('piece-damaged', check.problem.sentence, check.problem.remedy, check.problem.detail));
      }
      const { record, revision } = check.value;
      const photo = { ...record.photo, hash: renamed.get(record.photo.hash) ?? record.photo.hash };
      const text = serialiseDocument(checkDocument, { ...record, photo }, revision, sha256);
      await addStream(zip, `checks/${id}.json`, true, () => Readable.from([new TextEncoder().encode(text)]));
    }
    zip.end();
  };
  feed().catch((thrown: unknown) => fail(fileProblem(thrown, 'exporting the piece')));
  try {
    for await (const bytes of out) yield bytes as Uint8Array;
  } catch (thrown) {
    return problem ?? fileProblem(thrown, 'exporting the piece');
  }
  return problem ?? success(undefined);
}

const photoDamaged = [
  'A photograph was changed outside Plumbweft, or the disk spoilt it, so nothing was exported.',
  'Look through the piece with "plumbweft verify --mend", then export again.',
] as const;

/** A photograph's bytes in pieces; `spoilt` is called when they turn out not to be those of its name. */
async function* provedPieces(
  ports: StorePorts,
  path: string,
  hash: string,
  spoilt: () => void,
): AsyncGenerator<Uint8Array> {
  const sum = createHash('sha256');
  for await (const piece of ports.files.readPieces(path)) {
    sum.update(piece);
    yield piece;
  }
  if (sum.digest('hex') !== hash) spoilt();
}

const SLICE = 1 << 18;

/** Bytes in small pieces, so that a stream takes no more than it can pass on. */
function* slices(bytes: Uint8Array): Generator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += SLICE) yield bytes.subarray(at, at + SLICE);
}

/** Adds one entry and waits until all of it has gone into the zip. */
function addStream(zip: ZipFile, name: string, compress: boolean, open: () => Readable): Promise<void> {
  // The zip remembers every entry's callback to its end: what the entry is made from must be let go, or it piles up.
  const source: { open: (() => Readable) | null } = { open };
  return new Promise((resolve, reject) => {
    zip.addReadStreamLazy(name, { mtime: MTIME, mode: 0o100_644, compress, forceDosTimestamp: true }, (take) => {
      const stream = source.open!();
      source.open = null;
      stream.once('error', reject);
      stream.once('end', () => resolve());
      take(null, stream);
    });
  });
}
