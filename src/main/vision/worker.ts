import { parentPort, workerData } from 'node:worker_threads';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import { decodePhoto } from '../decode/decodePhoto.ts';
import { displayJpeg } from '../decode/displayJpeg.ts';
import { readPhotoMetadata } from '../decode/photoMetadata.ts';
import { frontOn } from './frontOn.ts';
import { measureLoom } from './measureLoomPending.ts';
import type { VisionAnswers, VisionMessage, VisionRequest, VisionTag } from './visionRequest.ts';

/**
 * One question, one answer, then the thread ends: ending it is what frees the memory of the decoders, and stopping it
 * half-way is a safe way to cancel.
 */
const tell = (message: VisionMessage): void => parentPort?.postMessage(message);

async function answer(request: VisionRequest): Promise<Outcome<VisionAnswers[keyof VisionAnswers], VisionTag>> {
  const begun = performance.now();
  tell({ kind: 'stage', stage: 'decode', done: 0, of: 1 });
  const decoded = await decodePhoto(request.bytes);
  if (!decoded.ok) return decoded;
  const photo = decoded.value;
  const timingMs: Record<string, number> = { decode: Math.round(performance.now() - begun) };
  switch (request.kind) {
    case 'image':
      return success(await displayJpeg(photo, request.fit));
    case 'front-on':
      return success(await displayJpeg(frontOn(photo, request.piece, request.reference, request.rectangle), {}));
    case 'measure': {
      const metadata = await readPhotoMetadata(request.bytes);
      // The core has no clock: the time between two stages is taken here.
      let stage = '';
      let since = performance.now();
      const close = (next: string) => {
        const now = performance.now();
        if (stage !== '' && stage !== next) timingMs[stage] = Math.round((timingMs[stage] ?? 0) + now - since);
        if (stage !== next) since = now;
        stage = next;
      };
      const reading = measureLoom(photo, request.piece, {
        points: request.points,
        onStage: (name, done, of) => {
          close(name);
          tell({ kind: 'stage', stage: name, done, of });
        },
      });
      close('');
      timingMs.total = Math.round(performance.now() - begun);
      return success({
        width: photo.width,
        height: photo.height,
        metadata,
        reading: { ...reading, timingMs: { ...reading.timingMs, ...timingMs } },
      });
    }
  }
}

if (parentPort !== null) {
  answer(workerData as VisionRequest)
    .catch((thrown: unknown) =>
      failure(
        'internal',
        "Something Plumbweft didn't expect happened while reading the photograph.",
        'Try another photograph; if it happens again, copy the report and send it to us.',
        thrown instanceof Error ? `${thrown.name}: ${thrown.message}` : String(thrown),
      ),
    )
    .then((outcome) => tell({ kind: 'answer', outcome }));
}
