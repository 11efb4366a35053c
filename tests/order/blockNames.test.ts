import { expect, test } from 'vitest';
import { planPiece } from '../../src/core/plan/planPiece.ts';
import { blockName } from '../../src/core/words/de/blockName.ts';
import { flatPiece } from '../chart/simplePiece.ts';

const PITCH = 6;

/** Block names of a piece of 40 ends and 120 passes of a millimetre: boxes of ends and passes, each with its name. */
function names(boxes: readonly (readonly [string, number, number, number, number])[]): readonly string[] {
  const x = (end: number) => (end - 20) * PITCH + 1;
  const piece = flatPiece({
    ends: 40,
    pitch: PITCH,
    passes: 120,
    passHeight: 1,
    shapes: boxes.map(([, left, right, bottom, top]) => ({
      kind: 'poly',
      pts: [
        [x(left), bottom],
        [x(right), bottom],
        [x(right), top],
        [x(left), top],
      ],
      yarn: 2,
    })),
  });
  const shapes = piece.shapes.map((shape, index) => ({ ...shape, name: boxes[index]![0] }));
  return planPiece({ ...piece, shapes }).blocks.map(({ name }) => name);
}

test('what lies beside each other is told apart by side, what lies over each other by height', () => {
  const beside = names([
    ['Hill', 5, 12, 20, 60],
    ['Hill', 28, 35, 20, 60],
  ]);
  expect(new Set(beside)).toEqual(
    new Set([
      'Ground, foot',
      'Hill, left',
      'Hill, right',
      'Ground, left of the hill',
      'Ground, between the hill and its twin',
      'Ground, right of the hill',
      'Ground, head',
    ]),
  );
  expect(beside.map(blockName)).toEqual(
    expect.arrayContaining(['Hill, links', 'Grund, zwischen „Hill“ und dem Gegenstück']),
  );
  const over = names([
    ['Stripe', 0, 40, 20, 40],
    ['Stripe', 0, 40, 70, 90],
  ]);
  expect(over.filter((name) => name.startsWith('Stripe'))).toEqual(['Stripe, foot', 'Stripe, head']);
  const three = names([
    ['Post', 4, 9, 20, 60],
    ['Post', 17, 22, 20, 60],
    ['Post', 31, 36, 20, 60],
  ]);
  expect(new Set(three.filter((name) => name.startsWith('Post')))).toEqual(
    new Set(['Post, left', 'Post, centre', 'Post, right']),
  );
});

test('no two blocks of one piece are called the same', () => {
  for (const all of [
    names([
      ['Hill', 5, 12, 10, 40],
      ['Hill', 28, 35, 10, 40],
      ['Hill', 5, 12, 70, 100],
      ['Hill', 28, 35, 70, 100],
    ]),
    // One part rises beside all the others of its name.
    names([
      ['Post', 2, 6, 10, 110],
      ['Post', 20, 24, 10, 30],
      ['Post', 20, 24, 50, 70],
      ['Post', 20, 24, 90, 110],
    ]),
    names([2, 10, 18, 26, 34].map((left) => ['Post', left, left + 4, 20, 60] as const)),
  ])
    expect(new Set(all).size).toBe(all.length);
});
