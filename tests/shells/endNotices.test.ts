import { expect, test } from 'vitest';
import type { Outcome } from '../../src/core/model/outcome.ts';
import { failure, success } from '../../src/core/model/outcome.ts';
import { endNotices } from '../../src/main/electron/endNotices.ts';

interface Scene {
  readonly name?: string;
  readonly seconds?: number;
  readonly away?: boolean;
  readonly outcome?: Outcome<never>;
  readonly language?: 'en' | 'de';
}

/** What is shown when one call ends. */
async function shown(scene: Scene): Promise<string[]> {
  const said: string[] = [];
  let now = 1_000;
  const service = {
    call: async () => {
      now += (scene.seconds ?? 5) * 1_000;
      return scene.outcome ?? success({ result: {}, bytes: null } as never);
    },
  };
  const noticed = endNotices(service, {
    now: () => now,
    away: () => scene.away ?? true,
    language: async () => scene.language ?? 'en',
    show: (words) => said.push(words),
  });
  const outcome = await noticed.call(scene.name ?? 'measurePhoto', {}, null);
  expect(outcome).toEqual(scene.outcome ?? success({ result: {}, bytes: null }));
  return said;
}

test('a long call that ends while nobody looks is said, in the weaver’s language', async () => {
  expect(await shown({})).toEqual(['The photograph is measured.']);
  expect(await shown({ language: 'de' })).toEqual(['Das Foto ist ausgemessen.']);
  expect(await shown({ name: 'exportPiece' })).toEqual(['The piece is packed.']);
  expect(await shown({ outcome: failure('internal', 'It broke.', 'Try again.') })).toEqual([
    'The photograph could not be measured.',
  ]);
});

test('a short call, one that is watched, one that was stopped and any other call are not said', async () => {
  expect(await shown({ seconds: 1 })).toEqual([]);
  expect(await shown({ away: false })).toEqual([]);
  expect(await shown({ outcome: failure('cancelled', 'Stopped.', 'Ask again.') })).toEqual([]);
  expect(await shown({ name: 'listChecks' })).toEqual([]);
  expect(await shown({ name: 'constructor' })).toEqual([]);
});
