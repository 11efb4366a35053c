import { beforeEach, expect, it } from 'vitest';
import type { HostApi } from '../../src/core/contract/hostApi.ts';
import { planPiece } from '../../src/core/plan/planPiece.ts';
import { workTurns } from '../../src/core/report/workTurns.ts';
import { setHost } from '../../src/renderer/host/currentHost.ts';
import { countByCheck, takeBackCount } from '../../src/renderer/state/countByCheck.ts';
import { usePiece } from '../../src/renderer/state/pieceStore.ts';
import { tickFinished } from '../../src/renderer/state/tickFinished.ts';
import { countTurns } from '../../src/renderer/state/useWork.ts';
import { lantern } from '../support/pieces.ts';

const plan = planPiece(lantern());
const work = { plan, turns: workTurns(plan.blocks, plan.sequence) };
const passes = () => usePiece.getState().progress?.passesDone;
const opened = { key: 'k1', revision: 1, piece: lantern(), progress: null, readOnly: null, sample: false };

beforeEach(() => {
  const call = async () => ({ ok: true, value: { result: {}, bytes: null } });
  setHost({ listen: () => () => undefined, call } as unknown as HostApi);
  usePiece.getState().open(opened);
});

it('a count taken over from a check is taken back to what was counted before, finishing stays ticked', () => {
  countTurns(work, 3);
  const before = usePiece.getState().progress!;
  countByCheck(work, 9, 2);
  expect(passes()).toBeGreaterThan(before.passesDone);
  expect(usePiece.getState().countedByCheck).toMatchObject({ check: 2 });
  tickFinished('twine', true);
  takeBackCount();
  expect(usePiece.getState().progress).toMatchObject({
    passesDone: before.passesDone,
    planFingerprint: before.planFingerprint,
    finished: ['twine'],
  });
  expect(usePiece.getState().countedByCheck).toBeNull();
});

it('where nothing was counted before, nothing is counted after', () => {
  countByCheck(work, 9, 2);
  takeBackCount();
  expect(passes()).toBe(0);
});

it('once the hand counts on, or another piece is opened, there is nothing to take back', () => {
  countByCheck(work, 9, 2);
  countTurns(work, 8);
  const byHand = passes();
  takeBackCount();
  expect(passes()).toBe(byHand);
  countByCheck(work, 9, 2);
  usePiece.getState().open({ ...opened, key: 'k2' });
  expect(usePiece.getState().countedByCheck).toBeNull();
});
