import { expect, test } from 'vitest';
import type { Block } from '../../src/core/model/plan.ts';
import { passesOfTurns, turnAfterPasses, workSteps, workTurns } from '../../src/core/report/workTurns.ts';

const block = (order: number, rows: readonly (readonly [number, number, number])[]): Block => ({
  order,
  name: `Block ${order + 1}`,
  yarn: 0,
  area: 0,
  start: { end: rows[0]![1], to: rows[0]![2], side: 'left', over: true },
  rows: rows.map(([pass, from, to]) => ({ pass, from, to })),
  left: [],
  right: [],
  words: [],
  after: [],
  partner: null,
  continues: null,
  together: [],
  heights: { left: [], right: [] },
  remarks: [],
});

// A hill of three passes and a half: five ends for two turns, then one end in at both sides, then a single pass.
const hill = block(0, [
  [0, 0, 4],
  [1, 4, 0],
  [2, 0, 4],
  [3, 4, 1],
  [4, 1, 3],
]);

test('a block is told in turns, gathered into steps of the same ends', () => {
  const turns = workTurns([hill], []);
  expect(turns.map(({ row, passes, left, right }) => [row, passes, left, right])).toEqual([
    [0, 2, 0, 4],
    [2, 2, 0, 4],
    [4, 1, 1, 3],
  ]);
  expect(workSteps(turns)).toEqual([
    { block: 0, firstTurn: 0, turns: 2, left: 0, right: 4, moves: { left: -1, right: -1 } },
    { block: 0, firstTurn: 2, turns: 1, left: 1, right: 3, moves: null },
  ]);
});

test('passes done say which turn is being woven, and back', () => {
  const turns = workTurns([hill], []);
  expect([0, 1, 2, 4, 5].map((passes) => turnAfterPasses(turns, passes))).toEqual([0, 0, 1, 2, 3]);
  expect([0, 1, 2, 3].map((count) => passesOfTurns(turns, count))).toEqual([0, 2, 4, 5]);
});

test('wefts that rise together alternate as their sequence says', () => {
  const left = block(0, [
    [0, 0, 2],
    [1, 2, 0],
  ]);
  const right = block(1, [
    [0, 5, 3],
    [1, 3, 5],
  ]);
  const sequence = [
    { block: 0, row: 0 },
    { block: 1, row: 0 },
    { block: 0, row: 1 },
    { block: 1, row: 1 },
  ];
  const blocks = [
    { ...left, together: [1] },
    { ...right, together: [0] },
  ];
  expect(workTurns(blocks, sequence).map(({ block: which, row, passes }) => [which, row, passes])).toEqual([
    [0, 0, 1],
    [1, 0, 1],
    [0, 1, 1],
    [1, 1, 1],
  ]);
});

test('edges that step one pass apart are told as one step', () => {
  // Starts at the right: the left edge moves in passes (0, 1), (2, 3), the right one a pass later.
  const foot = block(0, [
    [0, 4, 4],
    [1, 4, 4],
    [2, 4, 3],
    [3, 3, 5],
    [4, 5, 3],
    [5, 3, 5],
    [6, 5, 2],
    [7, 2, 6],
  ]);
  expect(workSteps(workTurns([foot], [])).map(({ turns, left, right }) => [turns, left, right])).toEqual([
    [1, 4, 4],
    [2, 3, 5],
    [1, 2, 6],
  ]);
});
