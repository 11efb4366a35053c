import { describe, expect, it } from 'vitest';
import { fillPassesUnder } from '../../src/core/photo/passesUnder.ts';

/** Hides the cells of passes that go under, then tells them from the rest. */
function told(cloth: readonly string[]): string[] {
  const isUnder = (end: number, pass: number): boolean => (end + pass) % 2 === 1;
  const upward = [...cloth].reverse();
  const rows = upward.map((row, pass) => [...row].map((yarn, end) => (isUnder(end, pass) ? -1 : Number(yarn))));
  fillPassesUnder(rows, new Array(cloth[0]!.length).fill(cloth.length), isUnder);
  return rows.map((row) => row.join('')).reverse();
}

describe('passes under an end', () => {
  it.each([
    ['one yarn', ['00000', '00000', '00000', '00000']],
    ['a line of one turn', ['0000000', '0000000', '1111111', '1111111', '0000000', '0000000']],
    ['a line of one pass', ['0000000', '0000000', '1111111', '0000000', '0000000', '0000000']],
    ['two areas side by side', ['00011', '00011', '00011', '00011']],
    ['an edge that steps by an end each turn', ['000001', '000001', '000011', '000011', '000111', '000111']],
    ['a column on one end', ['0010000', '0010000', '0010000', '0010000']],
    ['an outer end of its own', ['1000000', '1000000', '1000000', '1000000']],
  ])('%s', (_, cloth) => {
    expect(told(cloth)).toEqual(cloth);
  });

  it('leaves what isn’t woven', () => {
    const rows = [
      [0, -1],
      [-1, -1],
    ];
    fillPassesUnder(rows, [2, 0], (end, pass) => (end + pass) % 2 === 1);
    expect(rows).toEqual([
      [0, -1],
      [0, -1],
    ]);
  });
});
