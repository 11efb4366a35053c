import { expect, test } from 'vitest';
import type { HostApi } from '../../src/core/contract/hostApi.ts';
import { setHost } from '../../src/renderer/host/currentHost.ts';
import { exportPiece } from '../../src/renderer/state/pieceActions.ts';

test('a piece kept as one file takes no places along', async () => {
  const asked: unknown[] = [];
  setHost({
    listen: () => () => undefined,
    call: async (name: string, params: unknown) => {
      if (name === 'exportPiece') asked.push(params);
      return { ok: true, value: { result: { name: 'x.zip' }, bytes: null } };
    },
  } as unknown as HostApi);
  expect(await exportPiece('p-1')).toBeNull();
  expect(asked).toEqual([{ key: 'p-1', keepPlaces: false }]);
});
