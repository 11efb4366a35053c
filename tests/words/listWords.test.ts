import { expect, test } from 'vitest';
import { listInWords } from '../../src/core/model/listWords.ts';
import { tellIn } from '../../src/core/words/telling.ts';

test('things are named with commas, and one “and” before the last', () => {
  expect(listInWords([])).toBe('');
  expect(listInWords([3])).toBe('3');
  expect(listInWords([3, 5])).toBe('3 and 5');
  expect(listInWords([3, 5, 6])).toBe('3, 5 and 6');
  expect(listInWords(['3', '5', '6', '12'], 'und')).toBe('3, 5, 6 und 12');
});

test('such a list is told in German with the same numbers', () => {
  const said = (blocks: string) =>
    tellIn('de', `Rises together with blocks ${blocks}: weave them in turn, none more than a turn ahead.`);
  expect(said('3 and 5')).toContain('mit den Flächen 3 und 5:');
  expect(said('3, 5, 6 and 12')).toContain('mit den Flächen 3, 5, 6 und 12:');
  expect(tellIn('de', 'Ends 3, 5 and 6 may be missing or hidden.')).toBe(
    'Die Kettfäden 3, 5 und 6 fehlen vielleicht oder sind verdeckt.',
  );
  expect(tellIn('de', 'Rises together with block 4: weave them turn about, so that their wefts meet.')).toContain(
    'mit Fläche 4:',
  );
});
