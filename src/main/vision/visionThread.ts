import { Worker } from 'node:worker_threads';
import type { VisionMessage, VisionRequest } from './visionRequest.ts';

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
/**
 * Starting a thread and warming it up takes longer than reading a small photograph, so it stays for the next question;
 * ending it is what gives the memory of the decoders back, so it doesn't stay for ever.
 */
const RESTING_MS = 20_000;

/** Hears what the thread says while it works on one question. */
export interface ThreadListener {
  readonly said: (message: VisionMessage) => void;
  /** The thread ended, or can't be trusted any more. */
  readonly broke: (detail: string) => void;
}

export interface VisionThread {
  /** @throws what can't be sent to a thread. */
  readonly ask: (request: VisionRequest, listener: ThreadListener) => void;
  /** The question is answered: the thread waits for another, for a while. */
  readonly rest: () => void;
  /** @returns when the thread is gone and its memory with it. */
  readonly end: () => Promise<void>;
}

let resting: { readonly thread: VisionThread; readonly worker: VisionWorker } | null = null;

/** The thread that rests, if it is one of this worker, else a new one; one of another worker is ended first. */
export async function takeThread(worker: VisionWorker): Promise<VisionThread> {
  const waiting = resting;
  resting = null;
  if (waiting === null) return startThread(worker);
  if (waiting.worker.path === worker.path && waiting.worker.heapMb === worker.heapMb) return waiting.thread;
  await waiting.thread.end();
  return startThread(worker);
}

/** Ends the thread that rests, if any: reading what it prints keeps the program running as long as it lives. */
export const endRestingThread = async (): Promise<void> => {
  await resting?.thread.end();
};

function startThread(worker: VisionWorker): VisionThread {
  const port = new Worker(worker.path, {
    execArgv: [...(worker.execArgv ?? [])],
    resourceLimits: { maxOldGenerationSizeMb: worker.heapMb ?? USUAL_HEAP_MB },
    // The decoders print by themselves; on the command line that would get in among the answers.
    stdout: true,
    stderr: true,
  });
  port.stdout.resume();
  port.stderr.resume();
  let listener: ThreadListener | null = null;
  let patience: NodeJS.Timeout | undefined;
  const thread: VisionThread = {
    ask(request, next) {
      clearTimeout(patience);
      listener = next;
      port.postMessage(request);
    },
    rest() {
      listener = null;
      resting = { thread, worker };
      patience = setTimeout(() => void thread.end(), RESTING_MS);
    },
    async end() {
      listener = null;
      forget();
      clearTimeout(patience);
      await port.terminate().catch(() => undefined);
    },
  };
  const forget = () => {
    if (resting?.thread === thread) resting = null;
  };
  const broke = (detail: string) => {
    forget();
    listener?.broke(detail);
  };
  port.on('message', (message: VisionMessage) => listener?.said(message));
  port.on('error', (thrown) => broke(`${thrown.name}: ${thrown.message}`));
  port.on('exit', (code) => broke(`exit ${code}`));
  return thread;
}
