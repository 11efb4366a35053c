import type { WeaverPlan } from './planDocument.ts';

/**
 * Plans written by hand from a drawn chart, one character a cell, top pass first. They were worked out on squared
 * paper, not by a program, so that the weaver is held to what a hand does and not to what the planner prints.
 */
export interface HandBlock {
  readonly yarn: string;
  /** `left 0 > 3 over`: starts at the left on end 0, first pass stops at end 3, over the first end. */
  readonly start: string;
  /** `1.5 in 1, 2`: turns, then a move; the last has none. */
  readonly left: string;
  readonly right: string;
  /** `pass:from>to`, in the order woven. */
  readonly rows: string;
  readonly words?: readonly string[];
}

function steps(line: string): { turns: number; ends: number }[] {
  return line.split(', ').map((part) => {
    const [turns, direction, ends] = part.split(' ');
    return { turns: Number(turns), ends: direction === undefined ? 0 : Number(ends) * (direction === 'in' ? -1 : 1) };
  });
}

function runs(line: string): [string, number][] {
  const found: [string, number][] = [];
  for (const yarn of line) {
    const last = found.at(-1);
    if (last?.[0] === yarn) last[1] += 1;
    else found.push([yarn, 1]);
  }
  return found;
}

export function handPlan(
  parity: 0 | 1,
  drawing: readonly string[],
  blocks: readonly HandBlock[],
  sequence?: readonly { block: number; row: number }[],
): WeaverPlan {
  return {
    chart: { ends: drawing[0]!.length, passes: drawing.length, rows: [...drawing].reverse().map(runs) },
    parity,
    blocks: blocks.map((block, order) => {
      const said = /^(left|right) (\d+) > (\d+) (over|under)$/.exec(block.start)!;
      return {
        order,
        name: `Block ${order}`,
        yarn: block.yarn,
        start: {
          side: said[1] === 'left' ? 'left' : 'right',
          end: Number(said[2]),
          to: Number(said[3]),
          over: said[4] === 'over',
        },
        left: steps(block.left),
        right: steps(block.right),
        rows: block.rows.split(' ').map((row) => {
          const [pass, from, to] = row.split(/[:>]/).map(Number);
          return { pass: pass!, from: from!, to: to! };
        }),
        words: [...(block.words ?? [])],
      };
    }),
    ...(sequence === undefined ? {} : { sequence: [...sequence] }),
  };
}

/** Four ends by six passes of one yarn: three turns at the left counting the tail and the finish, three at the right. */
export const rectangle = (): WeaverPlan =>
  handPlan(
    0,
    ['aaaa', 'aaaa', 'aaaa', 'aaaa', 'aaaa', 'aaaa'],
    [
      {
        yarn: 'a',
        start: 'left 0 > 3 over',
        left: '3',
        right: '3',
        rows: '0:0>3 1:3>0 2:0>3 3:3>0 4:0>3 5:3>0',
        words: ['Start at the left, over end 1, and weave to end 4.', 'Both edges: 3 turns.'],
      },
    ],
  );

/**
 * A triangle that leans in from both sides, started at the left: its right edge turns in passes (0,1), (2,3), its
 * left in (1,2), (3,4), so the two edges step one pass apart. The ground meets it: where the triangle's weft travels
 * right, the ground's travels left.
 */
export const triangleFromLeft = (): WeaverPlan =>
  handPlan(
    0,
    ['baabbbb', 'baaaabb', 'aaaaabb', 'aaaaaaa', 'aaaaaaa'],
    [
      {
        yarn: 'a',
        start: 'left 0 > 6 over',
        left: '1.5 in 1, 1',
        right: '1 in 2, 1 in 2, 0.5',
        rows: '0:0>6 1:6>0 2:0>4 3:4>1 4:1>2',
        words: [
          'Start at the left, over end 1, and weave to end 7.',
          'Left edge: 1½ turns, then in 1 end; 1 turn.',
          'Right edge: 1 turn, then in 2 ends × 2; half a turn.',
        ],
      },
      { yarn: 'b', start: 'right 6 > 5 over', left: '1 out 2, 0.5', right: '1.5', rows: '2:6>5 3:5>6 4:6>3' },
      { yarn: 'b', start: 'left 0 > 0 under', left: '1', right: '1', rows: '3:0>0 4:0>0' },
    ],
  );

/** The same triangle seen in a mirror, started at the right. */
export const triangleFromRight = (): WeaverPlan =>
  handPlan(
    0,
    ['bbbbaab', 'bbaaaab', 'bbaaaaa', 'aaaaaaa', 'aaaaaaa'],
    [
      {
        yarn: 'a',
        start: 'right 6 > 0 over',
        left: '1 in 2, 1 in 2, 0.5',
        right: '1.5 in 1, 1',
        rows: '0:6>0 1:0>6 2:6>2 3:2>5 4:5>4',
      },
      { yarn: 'b', start: 'left 0 > 1 over', left: '1.5', right: '1 out 2, 0.5', rows: '2:0>1 3:1>0 4:0>3' },
      { yarn: 'b', start: 'right 6 > 6 under', left: '1', right: '1', rows: '3:6>6 4:6>6' },
    ],
  );

/**
 * Two hills on a base and a valley between. One valley weft can't move both its edges in the same pass, so the right
 * hill starts at its inner side and steps one pass after the left one.
 */
export const twoHillsAndAValley = (): WeaverPlan =>
  handPlan(
    1,
    ['aaagggaaa', 'aaaggaaaa', 'aaaagaaaa', 'aaaagaaaa', 'ggggggggg', 'ggggggggg'],
    [
      { yarn: 'g', start: 'left 0 > 8 under', left: '1', right: '1', rows: '0:0>8 1:8>0' },
      { yarn: 'a', start: 'left 0 > 3 under', left: '2', right: '1 in 1, 1', rows: '2:0>3 3:3>0 4:0>2 5:2>0' },
      { yarn: 'a', start: 'left 5 > 8 over', left: '1.5 in 1, 0.5', right: '2', rows: '2:5>8 3:8>5 4:5>8 5:8>6' },
      {
        yarn: 'g',
        start: 'right 4 > 4 under',
        left: '1 out 1, 1',
        right: '1.5 out 1, 0.5',
        rows: '2:4>4 3:4>4 4:4>3 5:3>5',
      },
    ],
  );

/** Two areas that take turns on end 3: each lies over the other somewhere, so both wefts must rise together. */
export const sharedEndPair = (): WeaverPlan =>
  handPlan(
    0,
    ['aaabbb', 'aaabbb', 'aaaabb', 'aaaabb', 'aaabbb', 'aaabbb'],
    [
      {
        yarn: 'a',
        start: 'left 0 > 2 over',
        left: '3',
        right: '1 out 1, 1 in 1, 1',
        rows: '0:0>2 1:2>0 2:0>3 3:3>0 4:0>2 5:2>0',
      },
      {
        yarn: 'b',
        start: 'right 5 > 3 under',
        left: '1 in 1, 1 out 1, 1',
        right: '3',
        rows: '0:5>3 1:3>5 2:5>4 3:4>5 4:5>3 5:3>5',
      },
    ],
    [0, 1, 2, 3, 4, 5].flatMap((row) => [
      { block: 0, row },
      { block: 1, row },
    ]),
  );
