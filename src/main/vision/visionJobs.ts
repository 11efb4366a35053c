import { Worker } from 'node:worker_threads';
import { failure, type Outcome } from '../../core/model/outcome.ts';
import type { VisionAnswers, VisionMessage, VisionRequest, VisionTag } from './visionRequest.ts';

/** Where the built worker is; each entry knows, since shared code lands in another folder. */
export interface VisionWorker {
  readonly path: string | URL;
  readonly execArgv?: readonly string[];
  /** How long one question may take. */
  readonly seconds: number;
  /** How much its own heap may hold, MB; pictures lie beside it, bounded by their limit of pixels. */
  readonly heapMb?: number;
}

const USUAL_HEAP_MB = 1536;

export interface VisionOptions {
  readonly onStage?: (stage: string, done: number, of: number) => void;
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
 * Asks the worker one question in a thread of its own. Cancelling answers at once, even while the question waits for
 * its turn, and ends the thread; the next question waits until that thread has given its memory back.
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

/** @returns when the thread is gone; the answer may have been given before that. */
function runOne(
  worker: VisionWorker,
  request: VisionRequest,
  { onStage, signal }: VisionOptions,
  answer: (outcome: Answer) => void,
): Promise<void> {
  if (signal?.aborted) return Promise.resolve();
  return new Promise((gone) => {
    const thread = new Worker(worker.path, {
      workerData: request,
      execArgv: [...(worker.execArgv ?? [])],
      resourceLimits: { maxOldGenerationSizeMb: worker.heapMb ?? USUAL_HEAP_MB },
      // The decoders print by themselves; on the command line that would get in among the answers.
      stdout: true,
      stderr: true,
    });
    thread.stdout.resume();
    thread.stderr.resume();
    let settled = false;
    const settle = (outcome: Answer) => {
      if (settled) return;
      settled = true;
      clearTimeout(timer);
      signal?.removeEventListener('abort', cancel);
      answer(outcome);
      thread.terminate().then(
        () => gone(),
        () => gone(),
      );
    };
    const cancel = () => settle(cancelled);
    const timer = setTimeout(
      () =>
        settle(
          failure(
            'took-too-long',
            `The photograph took longer than ${worker.seconds} seconds to measure.`,
            'Save a smaller copy and choose that.',
          ),
        ),
      worker.seconds * 1000,
    );
    signal?.addEventListener('abort', cancel);
    thread.on('message', (message: VisionMessage) => {
      if (settled) return;
      if (message.kind === 'stage') onStage?.(message.stage, message.done, message.of);
      else settle(message.outcome);
    });
    const stopped = (detail: string) => settle(stoppedHalfWay(detail));
    thread.on('error', (thrown) => stopped(`${thrown.name}: ${thrown.message}`));
    thread.on('exit', (code) => stopped(`exit ${code}`));
  });
}
