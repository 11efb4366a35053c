import { expect, test } from 'vitest';
import { fileBytes } from '../../src/renderer/host/fileBytes.ts';

test('a file that is gone by the time it is read is a problem, not a throw', async () => {
  expect(await fileBytes(new Blob(['abc']))).toEqual({ ok: true, value: new Uint8Array([97, 98, 99]) });
  const gone = Object.assign(new Blob(), { arrayBuffer: () => Promise.reject(new Error('NotReadableError')) });
  expect(await fileBytes(gone)).toMatchObject({ ok: false, problem: { tag: 'file-gone' } });
});
