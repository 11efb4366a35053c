import { Worker } from 'node:worker_threads';
import { failure, type Outcome } from '../../core/model/outcome.ts';
import type { VisionAnswers, VisionMessage, VisionRequest, VisionTag } from './visionRequest.ts';

/** Where the built worker is; each entry knows, since shared code lands in another folder. */
export interface VisionWorker {
  readonly path: string | URL;
  readonly execArgv?: readonly string[];
  /** How long one question may take. */
  readonly seconds: number;
}

export interface VisionOptions {
  readonly onStage?: (stage: string, done: number, of: number) => void;
  readonly signal?: AbortSignal;
}

/** One at a time: two photographs at once would double the memory and halve the speed. */
let queue: Promise<unknown> = Promise.resolve();

/** Asks the worker one question in a thread of its own; cancelling ends the thread. */
export function askVision<Kind extends VisionRequest['kind']>(
  worker: VisionWorker,
  request: Extract<VisionRequest, { kind: Kind }>,
  options: VisionOptions = {},
): Promise<Outcome<VisionAnswers[Kind], VisionTag>> {
  const turn = queue.then(() => runOne(worker, request, options));
  queue = turn;
  return turn as Promise<Outcome<VisionAnswers[Kind], VisionTag>>;
}

function runOne(
  worker: VisionWorker,
  request: VisionRequest,
  { onStage, signal }: VisionOptions,
): Promise<Outcome<VisionAnswers[keyof VisionAnswers], VisionTag>> {
  const cancelled = failure('cancelled', 'The measuring was stopped.', 'Choose the photograph again when you want it.');
  if (signal?.aborted) return Promise.resolve(cancelled);
  return new Promise((resolve) => {
    const thread = new Worker(worker.path, {
      workerData: request,
      execArgv: [...(worker.execArgv ?? [])],
      resourceLimits: { maxOldGenerationSizeMb: 1536 },
      // The decoders print by themselves; on the command line that would get in among the answers.
      stdout: true,
      stderr: true,
    });
    thread.stdout.resume();
    thread.stderr.resume();
    let settled = false;
    const settle = (outcome: Outcome<VisionAnswers[keyof VisionAnswers], VisionTag>) => {
      if (settled) return;
      settled = true;
      clearTimeout(timer);
      signal?.removeEventListener('abort', cancel);
      // The next question waits until this thread has given its memory back.
      thread.terminate().then(
        () => resolve(outcome),
        () => resolve(outcome),
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
      if (message.kind === 'stage') onStage?.(message.stage, message.done, message.of);
      else settle(message.outcome);
    });
    const stopped = (detail: string) =>
      settle(
        failure(
          'internal',
          'Reading the photograph stopped half-way.',
          'Try a smaller photograph; if it happens again, copy the report and send it to us.',
          detail,
        ),
      );
    thread.on('error', (thrown) => stopped(`${thrown.name}: ${thrown.message}`));
    thread.on('exit', (code) => stopped(`exit ${code}`));
  });
}
