import { expect, it } from 'vitest';
import { shell } from '../../src/renderer/words/en/shell.ts';
import { pieceInWords } from '../../src/renderer/words/pieceInWords.ts';

const piece = (key: string, name: string, folder: string) => ({
  key,
  name,
  folder,
  changed: '2026-03-03T12:00:00Z',
  checks: 1,
  available: true,
});

it('pieces of one name are told apart by their folders, others have no need of it', () => {
  const pieces = [piece('a', 'Boat', 'Boat'), piece('b', 'Boat', 'Boat 2'), piece('c', 'Lantern', 'Lantern')];
  const said = pieces.map((each) => pieceInWords(each, pieces, shell));
  expect(said[0]).toMatch(/^Boat · 1 check · 3 Mar/);
  expect(said[1]).toMatch(/^Boat 2 · 1 check/);
  expect(said[2]).toMatch(/^1 check/);
});
