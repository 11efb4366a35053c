import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { HostApi, OpenedPiece } from '../../src/core/contract/hostApi.ts';
import { setHost } from '../../src/renderer/host/currentHost.ts';
import { newPiece } from '../../src/renderer/state/newPiece.ts';
import { usePiece } from '../../src/renderer/state/pieceStore.ts';
import { firstRun } from '../../src/renderer/words/en/firstRun.ts';

const saved: { revision: number; name: string }[] = [];
let refuse = false;
const host = {
  listen: () => () => undefined,
  call: async (name: string, params: { revision: number; piece: { name: string } }) => {
    if (name !== 'savePiece') return { ok: true, value: { result: {}, bytes: null } };
    await Promise.resolve();
    if (refuse)
      return { ok: false, problem: { tag: 'disk-full', sentence: 'The disk is full.', remedy: 'Make room.' } };
    saved.push({ revision: params.revision, name: params.piece.name });
    return { ok: true, value: { result: { revision: params.revision + 1 }, bytes: null } };
  },
} as unknown as HostApi;

const opened: OpenedPiece = {
  key: 'k1',
  revision: 7,
  piece: newPiece('Lantern', 'mm', '2026-11-25T10:00:00Z', firstRun.called),
  progress: null,
  readOnly: null,
  sample: false,
};
const rename = (name: string, gather: string | null = null) =>
  usePiece.getState().change((piece) => ({ ...piece, name }), gather);
const name = () => usePiece.getState().piece?.name;

beforeEach(() => {
  vi.useFakeTimers();
  saved.length = 0;
  refuse = false;
  setHost(host);
  usePiece.getState().open(opened);
});

describe('the open piece', () => {
  it('can be undone to its first state and redone to its last, without limit', () => {
    for (let step = 1; step <= 500; step++) rename(`Lantern ${step}`);
    for (let step = 0; step < 500; step++) usePiece.getState().undo();
    expect(name()).toBe('Lantern');
    usePiece.getState().undo();
    expect(name()).toBe('Lantern');
    for (let step = 0; step < 500; step++) usePiece.getState().redo();
    expect(name()).toBe('Lantern 500');
  });

  it('undoes one drag as one step', () => {
    for (const part of ['a', 'b', 'c']) rename(part, 'typing the name');
    rename('d');
    usePiece.getState().undo();
    expect(name()).toBe('c');
    usePiece.getState().undo();
    expect(name()).toBe('Lantern');
  });

  it('takes changes of one kind for two steps when there is a pause between them, but a drag for one', () => {
    rename('a', 'nudge');
    vi.advanceTimersByTime(1000);
    rename('b', 'nudge');
    usePiece.getState().undo();
    expect(name()).toBe('a');
    rename('c', 'drag');
    vi.advanceTimersByTime(5000);
    rename('d', 'drag');
    usePiece.getState().undo();
    expect(name()).toBe('a');
  });

  it('is saved a moment after the last change, each save on the revision before it', async () => {
    rename('one');
    rename('two');
    await vi.advanceTimersByTimeAsync(1000);
    rename('three');
    await vi.advanceTimersByTimeAsync(1000);
    expect(saved).toEqual([
      { revision: 7, name: 'two' },
      { revision: 8, name: 'three' },
    ]);
    expect(usePiece.getState().notSaved).toBeNull();
  });

  it('says why it is not saved, and saves when asked again', async () => {
    refuse = true;
    rename('one');
    await vi.advanceTimersByTimeAsync(1000);
    expect(usePiece.getState().notSaved?.sentence).toBe('The disk is full.');
    refuse = false;
    await usePiece.getState().saveNow();
    expect(saved.at(-1)?.name).toBe('one');
    expect(usePiece.getState().notSaved).toBeNull();
  });

  it('is not changed when it may only be looked at', () => {
    usePiece.getState().open({ ...opened, readOnly: 'It is open elsewhere.' });
    rename('other');
    expect(name()).toBe('Lantern');
  });
});
