import { expect, test } from 'vitest';
import { bareFoot } from '../../src/core/photo/bareFoot.ts';
import { usualSwing } from '../../src/core/photo/floatSwing.ts';
import type { WeaveLine } from '../../src/core/photo/weaveLines.ts';
import { beat, floats, pass, wovenLine } from '../support/wovenLine.ts';

/** Ends woven to a height, whose floats begin only so many passes up. */
const cloth = (from: (end: number) => number) =>
  Array.from({ length: 20 }, (_, end) => wovenLine(end, 70, (y) => (y > from(end) * pass ? floats(end, y) : 0)));

const toldBare = (lines: readonly WeaveLine[]): boolean => bareFoot(lines, beat, usualSwing(lines, beat));

test('cloth whose floats begin far above its foot was seen in the wrong place', () => {
  expect(toldBare(cloth(() => 25))).toBe(true);
  expect(toldBare(cloth(() => 0))).toBe(false);
});

test('a header in a yarn without gloss is no bare foot, nor are a few ends under a card', () => {
  expect(toldBare(cloth(() => 9))).toBe(false);
  expect(toldBare(cloth((end) => (end < 12 ? 25 : 0)))).toBe(false);
});
