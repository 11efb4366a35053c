import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { askVision } from '../../src/main/vision/visionJobs.ts';
import { sourceWorker } from '../support/serviceForTest.ts';

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
