import { expect, test } from 'vitest';
import { bareFoot } from '../../src/core/photo/bareFoot.ts';
import { beat, floats, pass, wovenLine } from '../support/wovenLine.ts';

/** Ends woven to a height, whose floats begin only so many passes up. */
const cloth = (from: (end: number) => number) =>
  Array.from({ length: 20 }, (_, end) => wovenLine(end, 70, (y) => (y > from(end) * pass ? floats(end, y) : 0)));

test('cloth whose floats begin far above its foot was seen in the wrong place', () => {
  expect(
    bareFoot(
      cloth(() => 25),
      beat,
    ),
  ).toBe(true);
  expect(
    bareFoot(
      cloth(() => 0),
      beat,
    ),
  ).toBe(false);
});

test('a header in a yarn without gloss is no bare foot, nor are a few ends under a card', () => {
  expect(
    bareFoot(
      cloth(() => 9),
      beat,
    ),
  ).toBe(false);
  expect(
    bareFoot(
      cloth((end) => (end < 12 ? 25 : 0)),
      beat,
    ),
  ).toBe(false);
});
