import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { askVision } from '../../src/main/vision/visionJobs.ts';
import { endRestingThread, type VisionWorker } from '../../src/main/vision/visionThread.ts';
import { sourceWorker } from '../support/serviceForTest.ts';
import { temporaryFolder } from '../support/temporaryFolder.ts';

const bytes = new Uint8Array(readFileSync(join(import.meta.dirname, '../fixtures/sequence/seq2.jpg')));
const question = { kind: 'image', bytes, fit: { height: 100 } } as const;

test('a question that waits for its turn is cancelled at once, and the next is answered', async () => {
  const running = askVision<'image'>(sourceWorker, question);
  const abort = new AbortController();
  const waiting = askVision<'image'>(sourceWorker, question, { signal: abort.signal });
  const order: string[] = [];
  const both = Promise.all([
    running.then((answer) => order.push(answer.ok ? 'running' : answer.problem.tag)),
    waiting.then((answer) => order.push(answer.ok ? 'waiting' : answer.problem.tag)),
  ]);
  abort.abort();
  await both;
  expect(order).toEqual(['cancelled', 'running']);
  expect(await askVision<'image'>(sourceWorker, question)).toMatchObject({ ok: true });
}, 60_000);

test('a question cancelled before it is asked is never begun', async () => {
  const abort = new AbortController();
  abort.abort();
  const stages: string[] = [];
  const answer = await askVision<'image'>(sourceWorker, question, {
    signal: abort.signal,
    onStage: (stage) => stages.push(stage),
  });
  expect(answer).toMatchObject({ ok: false, problem: { tag: 'cancelled' } });
  expect(stages).toEqual([]);
});

test('a worker that cannot be started is said, and the next question is answered', async () => {
  const broken = await askVision<'image'>({ path: 'no such worker', seconds: 5 }, question);
  expect(broken).toMatchObject({ ok: false, problem: { tag: 'internal' } });
  expect(await askVision<'image'>(sourceWorker, question)).toMatchObject({ ok: true });
}, 60_000);

/** A worker made of a few words, where the real one can't be brought to behave so. */
function worker(words: string, seconds: number): VisionWorker {
  const path = join(temporaryFolder(), 'worker.mjs');
  writeFileSync(path, words);
  return { path, seconds, heapMb: 64 };
}

test.each([
  ['goes on and on', 'for (;;);', 'took-too-long'],
  ['wants ever more memory', 'const all = []; for (;;) all.push(new Array(10_000).fill(0.5));', 'internal'],
  ['throws', 'throw new Error("x");', 'internal'],
  ['ends without a word', 'process.exit(0);', 'internal'],
  ['leaves a rejection', 'Promise.reject(new Error("x")); setInterval(() => 0, 1e6);', 'internal'],
])(
  'a worker that %s is ended and said, and the next question is answered',
  async (_what, words, tag) => {
    const broken = await askVision<'image'>(worker(words, tag === 'internal' ? 60 : 1), question);
    expect(broken).toMatchObject({ ok: false, problem: { tag } });
    expect(await askVision<'image'>(sourceWorker, question)).toMatchObject({ ok: true });
  },
  120_000,
);

/** Counts the questions of its life. Asked for 1 px of height it never answers; for 2, it ends soon after answering. */
const counting = `
  import { parentPort } from 'node:worker_threads';
  let asked = 0;
  parentPort.on('message', ({ fit }) => {
    asked++;
    if (fit.height === 2) setTimeout(() => process.exit(1), 50);
    if (fit.height !== 1) parentPort.postMessage({ kind: 'answer', outcome: { ok: true, value: asked } });
  });`;

test('one thread answers question after question, and a new one begins after a question was stopped', async () => {
  const counts = worker(counting, 30);
  const ask = (height: number, signal?: AbortSignal) =>
    askVision<'image'>(counts, { ...question, fit: { height } }, signal === undefined ? {} : { signal });
  expect(await ask(9)).toEqual({ ok: true, value: 1 });
  expect(await ask(9)).toEqual({ ok: true, value: 2 });
  const abort = new AbortController();
  const stopped = ask(1, abort.signal);
  setTimeout(() => abort.abort(), 100);
  expect(await stopped).toMatchObject({ ok: false, problem: { tag: 'cancelled' } });
  expect(await ask(9)).toEqual({ ok: true, value: 1 });
});

test('a thread that rests is ended when the program is to end', async () => {
  const counts = worker(counting, 30);
  const ask = () => askVision<'image'>(counts, { ...question, fit: { height: 9 } });
  expect(await ask()).toEqual({ ok: true, value: 1 });
  await endRestingThread();
  expect(await ask()).toEqual({ ok: true, value: 1 });
});

test('a thread that ends while it rests is not asked again', async () => {
  const counts = worker(counting, 30);
  const ask = (height: number) => askVision<'image'>(counts, { ...question, fit: { height } });
  expect(await ask(2)).toEqual({ ok: true, value: 1 });
  await new Promise((later) => setTimeout(later, 400));
  expect(await ask(9)).toEqual({ ok: true, value: 1 });
});
