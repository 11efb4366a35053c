import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import { inspectPhoto } from '../decode/inspectPhoto.ts';
import { sha256 } from '../files/sha256.ts';
import { readCheck } from '../store/checkStore.ts';
import { readPhoto } from '../store/photoStore.ts';
import { readPiece } from '../store/readPiece.ts';
import { frontOnSize } from '../vision/frontOn.ts';
import { askVision } from '../vision/visionJobs.ts';
import type { Drafts } from './drafts.ts';
import { earlierPhoto } from './earlierPhoto.ts';
import { answer, type Handlers } from './handlerTypes.ts';
import { openImageCache } from './imageCache.ts';
import type { Jobs } from './jobs.ts';
import type { OpenPieces } from './openPieces.ts';
import { readSettings } from './ownDocuments.ts';
import { readLenses, rememberLens } from './rememberedLenses.ts';
import type { SampleLabels } from './sample.ts';
import type { ServicePorts } from './servicePorts.ts';

type Names = 'measurePhoto' | 'cancelJob' | 'photoImage' | 'frontOnImage';

const fits = { thumbnail: { height: 240 }, screen: { width: 1600, height: 1600 }, full: {} } as const;
const type = 'image/jpeg';

/** Calls that look at photographs. They don't wait for a piece's writing, nor hold it up. */
export function photoHandlers(
  ports: ServicePorts,
  pieces: OpenPieces,
  drafts: Drafts,
  jobs: Jobs,
  labels: () => Promise<SampleLabels>,
): Handlers<Names> {
  const { store, worker, tell } = ports;
  const cache = openImageCache(ports);

  /** From a measurement not kept yet, or from the piece. */
  const bytesOf = async (key: string, hash: string): Promise<Outcome<Uint8Array>> => {
    const draft = drafts.withHash(key, hash);
    if (draft !== null) return success(draft.bytes);
    return pieces.use(key, (handle) => readPhoto(store, handle.folder, hash));
  };

  return {
    async measurePhoto({ key, job, name, hash, marks, camera, mirrored }, sent) {
      const given = sent !== null ? success(sent) : hash !== null ? await bytesOf(key, hash) : null;
      if (given === null) {
        return failure('photo-missing', 'No photograph came along.', 'Choose the photograph again.');
      }
      if (!given.ok) return given;
      const inspected = inspectPhoto(given.value);
      if (!inspected.ok) return inspected;
      const piece = await pieces.use(key, (handle) => readPiece(store, handle.folder));
      if (!piece.ok) return piece;
      const photoHash = sha256(given.value);
      const earlier = await pieces.use(key, async ({ folder }) =>
        success(await earlierPhoto(store, folder, piece.value.piece, photoHash)),
      );
      if (!earlier.ok) return earlier;
      const { cameras } = await readSettings(ports);
      const { lenses } = await readLenses(ports);
      const measured = await jobs.run(job, (signal) =>
        askVision<'measure'>(
          worker,
          {
            kind: 'measure',
            bytes: given.value,
            piece: piece.value.piece,
            marks,
            camera,
            cameras,
            mirrored: mirrored ?? null,
            lenses,
            earlier: earlier.value,
          },
          { signal, onStage: (stage, done, of) => tell({ kind: 'job', job, stage, done, of }) },
        ),
      );
      if (!measured.ok) return measured;
      const { width, height, metadata, reading } = measured.value;
      await rememberLens(ports, metadata.camera, reading);
      const known = await labels();
      const photoName = known.nameOf(photoHash) ?? name;
      drafts.add(job, {
        key,
        hash: photoHash,
        name: photoName,
        bytes: given.value,
        marks,
        metadata,
        reading,
      });
      const rendered = known.isRendered(photoHash);
      return answer({
        draft: job,
        photo: { hash: photoHash, name: photoName, width, height, rendered, camera: metadata.camera },
        reading,
      });
    },
    async cancelJob({ job }) {
      jobs.stop(job);
      return answer({});
    },
    // Stopped from the first moment on: also while the photograph is still being read from the disk.
    photoImage: ({ key, job, hash, size }) =>
      jobs.run(job, async (signal) => {
        const kept = size === 'full' ? null : await cache.read(hash, size);
        if (kept !== null) return answer({ type, width: kept.width, height: kept.height }, kept.jpeg);
        const bytes = await bytesOf(key, hash);
        if (!bytes.ok) return bytes;
        const image = await askVision<'image'>(
          worker,
          { kind: 'image', bytes: bytes.value, fit: fits[size] },
          { signal },
        );
        if (!image.ok) return image;
        if (size !== 'full') await cache.keep(hash, size, image.value);
        return answer({ type, width: image.value.width, height: image.value.height }, image.value.jpeg);
      }),
    frontOnImage: ({ key, job, hash, draft, check, ...rectangle }) =>
      jobs.run(job, async (signal) => {
        if (frontOnSize(rectangle) === null) {
          return failure('too-big', 'That view is empty or too large to draw.', 'Zoom out a little.');
        }
        const bytes = await bytesOf(key, hash);
        if (!bytes.ok) return bytes;
        const reference = await pieces.use(key, async (handle) => {
          if (draft !== null) return success(drafts.get(draft)?.reading.reference ?? null);
          if (check === null) return success(null);
          const read = await readCheck(store, handle.folder, check);
          return read.ok ? success(read.value.record.reading.reference) : read;
        });
        if (!reference.ok) return reference;
        if (reference.value === null) {
          return failure(
            'no-reference',
            "The photograph isn't tied to millimetres, so it can't be shown front-on.",
            'Mark the four corners of the loom, then try again.',
          );
        }
        const piece = await pieces.use(key, (handle) => readPiece(store, handle.folder));
        if (!piece.ok) return piece;
        const image = await askVision<'front-on'>(
          worker,
          { kind: 'front-on', bytes: bytes.value, piece: piece.value.piece, reference: reference.value, rectangle },
          { signal },
        );
        if (!image.ok) return image;
        return answer({ type, width: image.value.width, height: image.value.height }, image.value.jpeg);
      }),
  };
}
