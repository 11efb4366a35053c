import { parentPort } from 'node:worker_threads';
import { checkPhoto } from '../../core/compare/checkPhoto.ts';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import type { Stage } from '../../core/model/stage.ts';
import { stageTimes } from '../cli/stageTimes.ts';
import { decodePhoto } from '../decode/decodePhoto.ts';
import { displayJpeg } from '../decode/displayJpeg.ts';
import { readPhotoMetadata } from '../decode/photoMetadata.ts';
import { earlierReference } from './earlierCheck.ts';
import { frontOn } from './frontOn.ts';
import { turnedOver, turnsOver } from './turnedOver.ts';
import type { VisionAnswers, VisionMessage, VisionRequest, VisionTag } from './visionRequest.ts';

/** One question at a time, one answer to each. Nothing is kept between them, so ending the thread is always safe. */
const tell = (message: VisionMessage): void => parentPort?.postMessage(message);

async function answer(request: VisionRequest): Promise<Outcome<VisionAnswers[keyof VisionAnswers], VisionTag>> {
  // The core has no clock: the time between two stages is taken here.
  const times = stageTimes(() => performance.now());
  const begin = (stage: Stage, done: number, of: number) => {
    times.begin(stage);
    tell({ kind: 'stage', stage, done, of });
  };
  begin('decode', 0, 1);
  const decoded = await decodePhoto(request.bytes);
  if (!decoded.ok) return decoded;
  const photo = decoded.value;
  switch (request.kind) {
    case 'image':
      return success(await displayJpeg(photo, request.fit));
    case 'front-on':
      return success(await displayJpeg(frontOn(photo, request.piece, request.reference, request.rectangle), {}));
    case 'measure': {
      const read = await readPhotoMetadata(request.bytes);
      const metadata = { ...read, camera: request.camera ?? read.camera };
      const turned = turnedOver(request, metadata.camera);
      const lens = request.lenses.find(({ camera }) => camera === metadata.camera)?.lens ?? null;
      const now = { photo, camera: metadata.camera, mirrored: turned.mirrored ?? false, lens };
      const mirrors = (camera: string | null) => turnsOver(request.cameras, camera) ?? false;
      const kept = request.earlier;
      const before = kept && (await decodePhoto(kept.bytes));
      const earlier = () => {
        if (!kept || !before?.ok) return null;
        begin('earlier', 0, 1);
        return earlierReference(request.piece, now, kept, before.value, mirrors);
      };
      const options = { marks: request.marks, lens, earlier, ...turned, onStage: begin };
      const reading = checkPhoto(photo, request.piece, options);
      return success({
        width: photo.width,
        height: photo.height,
        metadata,
        reading: { ...reading, timingMs: { ...reading.timingMs, ...times.end() } },
      });
    }
  }
}

parentPort?.on('message', (request: VisionRequest) => {
  void answer(request)
    .catch((thrown: unknown) =>
      failure(
        'internal',
        "Something Plumbweft didn't expect happened while reading the photograph.",
        'Try another photograph; if it happens again, copy the report and send it to us.',
        thrown instanceof Error ? `${thrown.name}: ${thrown.message}` : String(thrown),
      ),
    )
    .then((outcome) => tell({ kind: 'answer', outcome }));
});
