import { afterEach, expect, test, vi } from 'vitest';
import { packEnvelope, unpackEnvelope } from '../../src/core/contract/envelope.ts';
import type { HostEvent } from '../../src/core/contract/hostApi.ts';
import { BRIDGE_NAME } from '../../src/core/contract/preloadBridge.ts';
import { httpHost } from '../../src/renderer/host/httpHost.ts';
import { preloadHost } from '../../src/renderer/host/preloadHost.ts';

const about = { shell: 'local', version: '1', why: 'a test' };
afterEach(() => {
  vi.unstubAllGlobals();
});

const answering = (status: number, body: Uint8Array) =>
  vi.fn(async (_url: string, _init: RequestInit) => new Response(body as Uint8Array<ArrayBuffer>, { status }));

test('over HTTP a call travels as one envelope and comes back checked', async () => {
  const fetched = answering(200, packEnvelope({ ok: true, value: { name: 'x.zip' } }, new Uint8Array([7])));
  vi.stubGlobal('fetch', fetched);
  const answer = await httpHost().call('exportPiece', { key: 'p-1', keepPlaces: false });
  expect(answer).toEqual({ ok: true, value: { result: { name: 'x.zip' }, bytes: new Uint8Array([7]) } });
  const [url, init] = fetched.mock.calls[0]!;
  expect(url).toBe('/call/exportPiece');
  expect(init).toMatchObject({ method: 'POST', headers: { 'Content-Type': 'application/octet-stream' } });
  expect(unpackEnvelope(init.body as Uint8Array)).toEqual({ json: { key: 'p-1', keepPlaces: false }, bytes: null });
});

test('over HTTP whatever goes wrong is a value with words', async () => {
  const problem = { tag: 'disk-full', sentence: 'The disk filled up.', remedy: 'Free some space.' };
  const cases: [ReturnType<typeof answering>, string][] = [
    [answering(200, packEnvelope({ ok: false, problem }, null)), 'disk-full'],
    [answering(200, packEnvelope({ ok: true, value: { ...about, more: 1 } }, null)), 'not-as-agreed'],
    [answering(200, packEnvelope({ ok: false, problem: { tag: 5 } }, null)), 'not-as-agreed'],
    [answering(200, packEnvelope(null, null)), 'not-as-agreed'],
    [answering(200, new Uint8Array([1, 2, 3])), 'not-as-agreed'],
    [answering(401, new Uint8Array()), 'http-401'],
    [answering(500, new Uint8Array()), 'http-500'],
    [vi.fn(async () => Promise.reject(new TypeError('network'))), 'host-gone'],
  ];
  for (const [fetched, tag] of cases) {
    vi.stubGlobal('fetch', fetched);
    expect(await httpHost().call('about', {})).toMatchObject({
      ok: false,
      problem: { tag, sentence: expect.stringMatching(/\.$/), remedy: expect.stringMatching(/\.$/) },
    });
  }
});

test('over HTTP events that are not as agreed are not heard', () => {
  let source: { onmessage: ((message: { data: string }) => void) | null; close: () => void } | null = null;
  vi.stubGlobal(
    'EventSource',
    class {
      onmessage = null;
      close = vi.fn();
      constructor() {
        source = this;
      }
    },
  );
  const heard: HostEvent[] = [];
  const stop = httpHost().listen((event) => heard.push(event));
  for (const data of ['{"kind":"command","command":"undo"}', '{"kind":"other"}', 'no json', '{"kind":"command"}']) {
    source!.onmessage?.({ data });
  }
  expect(heard).toEqual([{ kind: 'command', command: 'undo' }]);
  stop();
  expect(source!.close).toHaveBeenCalled();
});

test('through the preload script calls come back checked, and its faults are values', async () => {
  expect(preloadHost()).toBeNull();
  let listener: ((event: unknown) => void) | null = null;
  const invoke = vi.fn(async (name: string): Promise<unknown> => {
    if (name === 'about') return { ok: true, value: { result: about, bytes: null } };
    if (name === 'readSettings') return { ok: true, value: { result: { theme: 'loud' }, bytes: null } };
    throw new Error('gone');
  });
  vi.stubGlobal(BRIDGE_NAME, {
    invoke,
    listen: (given: typeof listener) => {
      listener = given;
      return () => {
        listener = null;
      };
    },
  });
  const host = preloadHost()!;
  expect(await host.call('about', {})).toEqual({ ok: true, value: { result: about, bytes: null } });
  expect(await host.call('readSettings', {})).toMatchObject({ problem: { tag: 'not-as-agreed' } });
  expect(await host.call('recentPieces', {})).toMatchObject({ problem: { tag: 'host-gone' } });
  const heard: HostEvent[] = [];
  const stop = host.listen((event) => heard.push(event));
  (listener as unknown as (event: unknown) => void)({ kind: 'open-piece', key: 'p-1' });
  (listener as unknown as (event: unknown) => void)({ kind: 'open-piece', key: '../x' });
  expect(heard).toEqual([{ kind: 'open-piece', key: 'p-1' }]);
  stop();
  expect(listener).toBeNull();
});
