import { failure, type Outcome } from '../../core/model/outcome.ts';
import type { Stage } from '../../core/model/stage.ts';
import type { VisionAnswers, VisionRequest, VisionTag } from './visionRequest.ts';
import { takeThread, type VisionWorker } from './visionThread.ts';

export interface VisionOptions {
  readonly onStage?: (stage: Stage, done: number, of: number) => void;
  readonly signal?: AbortSignal;
}

/** One at a time: two photographs at once would double the memory and halve the speed. */
let queue: Promise<unknown> = Promise.resolve();

type Answer = Outcome<VisionAnswers[keyof VisionAnswers], VisionTag>;

const cancelled = failure('cancelled', 'The measuring was stopped.', 'Choose the photograph again when you want it.');

const stoppedHalfWay = (detail: string) =>
  failure(
    'internal',
    'Reading the photograph stopped half-way.',
    'Try a smaller photograph; if it happens again, copy the report and send it to us.',
    detail,
  );

/**
 * Asks the worker one question in a thread beside this one. Cancelling answers at once, even while the question waits
 * for its turn, and ends the thread; the next question waits until that thread has given its memory back.
 */
export function askVision<Kind extends VisionRequest['kind']>(
  worker: VisionWorker,
  request: Extract<VisionRequest, { kind: Kind }>,
  options: VisionOptions = {},
): Promise<Outcome<VisionAnswers[Kind], VisionTag>> {
  const { signal } = options;
  const asked = new Promise<Answer>((answer) => {
    const cancel = () => answer(cancelled);
    if (signal?.aborted) return cancel();
    signal?.addEventListener('abort', cancel, { once: true });
    queue = queue
      .then(() => runOne(worker, request, options, answer))
      .catch((thrown: unknown) => answer(stoppedHalfWay(String(thrown))))
      .then(() => signal?.removeEventListener('abort', cancel));
  });
  return asked as Promise<Outcome<VisionAnswers[Kind], VisionTag>>;
}

/** @returns when the thread is free again or gone; the answer may have been given before that. */
async function runOne(
  worker: VisionWorker,
  request: VisionRequest,
  { onStage, signal }: VisionOptions,
  answer: (outcome: Answer) => void,
): Promise<void> {
  if (signal?.aborted) return;
  const thread = await takeThread(worker);
  let timer: NodeJS.Timeout | undefined;
  let cancel = () => {};
  /** Told by the thread itself, after which it can be asked again; or told of it, after which it can't. */
  const { outcome, sound } = await new Promise<{ readonly outcome: Answer; readonly sound: boolean }>((settle) => {
    const spoilt = (outcome: Answer) => settle({ outcome, sound: false });
    cancel = () => spoilt(cancelled);
    if (signal?.aborted) return cancel();
    signal?.addEventListener('abort', cancel);
    timer = setTimeout(
      () =>
        spoilt(
          failure(
            'took-too-long',
            `The photograph took longer than ${worker.seconds} seconds to measure.`,
            'Save a smaller copy and choose that.',
          ),
        ),
      worker.seconds * 1000,
    );
    thread.ask(request, {
      said(message) {
        if (message.kind === 'stage') onStage?.(message.stage, message.done, message.of);
        else settle({ outcome: message.outcome, sound: true });
      },
      broke: (detail) => spoilt(stoppedHalfWay(detail)),
    });
  });
  clearTimeout(timer);
  signal?.removeEventListener('abort', cancel);
  answer(outcome);
  if (sound) thread.rest();
  else await thread.end();
}
