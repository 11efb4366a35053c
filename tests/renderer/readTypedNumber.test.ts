import { expect, test } from 'vitest';
import { readTypedNumber } from '../../src/renderer/parts/readTypedNumber.ts';

test('a number is read as it is typed and as the program writes it, and nothing else is', () => {
  const read = (typed: string) => readTypedNumber(typed);
  expect([' 7 ', '2,5', '2.5', '.5', '1 200', '100 000', '1\u202f200', '-30', '−30'].map(read)).toEqual([
    7, 2.5, 2.5, 0.5, 1200, 100_000, 1200, -30, -30,
  ]);
  for (const typed of ['', ' ', '-', '1e3', '0x10', '1 2', '1,2,3', 'Infinity', '٣', '3 m'])
    expect(read(typed)).toBeNull();
});
