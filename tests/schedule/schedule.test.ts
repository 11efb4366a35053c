import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planPiece } from '../../src/core/plan/planPiece.ts';
import { edgeSteps } from '../../src/core/schedule/edgeSteps.ts';
import { scheduleWords } from '../../src/core/schedule/scheduleWords.ts';
import { flatPiece } from '../chart/simplePiece.ts';
import { readWords } from '../virtual-weaver/words.ts';

const whole = (steps: readonly { turns: number; ends: number }[]) => steps.filter((step) => step.turns !== 0.5);

describe('schedules of a plan', () => {
  /** A point on an end's middle, its edge running out by 16 ends over so many turns. */
  const triangle = (turns: number) =>
    flatPiece({
      ends: 33,
      pitch: 6.25,
      passes: 2 * turns,
      passHeight: 1,
      shapes: [
        {
          kind: 'poly',
          pts: [
            [0, 0],
            [-16 * 6.25, 2 * turns],
            [16 * 6.25, 2 * turns],
          ],
          yarn: 2,
        },
      ],
    });

  it('rises 4 in over 4 in at 24 passes to the inch by 3 turns for each end (common practice, no source)', () => {
    const [block] = planPiece(triangle(48)).blocks.filter((candidate) => candidate.area === 1);
    const moves = whole(block!.right).filter((step) => step.ends !== 0);
    expect(moves.map((step) => step.ends)).toEqual(new Array(moves.length).fill(1));
    expect(new Set(moves.slice(1).map((step) => step.turns))).toEqual(new Set([3]));
  });

  it('fits 47 turns in 16 steps with one 2 and fifteen 3 (common practice, no source)', () => {
    const [block] = planPiece(triangle(47)).blocks.filter((candidate) => candidate.area === 1);
    // The other edge has the same turns but half a turn at its beginning and its end.
    const edge = [block!.left, block!.right].find((steps) => steps.every((step) => step.turns !== 0.5))!;
    expect(edge.map((step) => step.turns).sort()).toEqual([2, ...new Array(15).fill(3)]);
  });

  it('steps straight lines by counts that differ by at most one, and a line and its mirror alike', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 30 }), fc.integer({ min: 20, max: 120 }), (halfEnds, turns) => {
        const ends = 2 * halfEnds + 1;
        const piece = flatPiece({
          ends,
          pitch: 4,
          passes: 2 * turns,
          passHeight: 1,
          shapes: [
            {
              kind: 'poly',
              pts: [
                [0, 0],
                [-halfEnds * 4, 2 * turns],
                [halfEnds * 4, 2 * turns],
              ],
              yarn: 2,
            },
          ],
        });
        const blocks = planPiece(piece).blocks.filter((candidate) => candidate.area === 1);
        expect(blocks).toHaveLength(1);
        const left = whole(blocks[0]!.left);
        const right = whole(blocks[0]!.right);
        // On an even number of passes one edge finishes half a turn short, so the last step may be lower there.
        const shared = Math.min(left.length, right.length) - 1;
        expect(left.slice(0, shared)).toEqual(right.slice(0, shared));
        const inner = (steps: typeof left) => steps.slice(1, shared);
        // Where a turn covers at most an end, the counts of turns differ by at most one.
        if (halfEnds <= turns) {
          const counts = inner(right).map((step) => step.turns);
          if (counts.length > 1) expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(1);
        }
      }),
      { numRuns: 80 },
    );
  });

  it('gives a point one end wide with odd ends, two with even (common practice, no source)', () => {
    const tip = (ends: number) => {
      const piece = flatPiece({
        ends,
        pitch: 4,
        passes: 100,
        passHeight: 1,
        shapes: [
          {
            kind: 'poly',
            pts: [
              [-30, 10],
              [30, 10],
              [0, 90],
            ],
            yarn: 2,
          },
        ],
      });
      const row = planPiece(piece)
        .blocks.filter((block) => block.area === 1)
        .at(-1)!
        .rows.at(-1)!;
      return Math.abs(row.to - row.from) + 1;
    };
    expect(tip(33)).toBe(1);
    expect(tip(32)).toBe(2);
  });

  it('writes half turns apart, at the tail and the finish', () => {
    const rows = [
      { pass: 0, from: 2, to: 5 },
      { pass: 1, from: 5, to: 1 },
      { pass: 2, from: 1, to: 4 },
      { pass: 3, from: 4, to: 1 },
    ];
    const bare = (side: 'left' | 'right') =>
      edgeSteps(rows, true, side).map(({ turns, ends, end, topPass }) => ({ turns, ends, end, topPass }));
    expect(bare('left')).toEqual([
      { turns: 0.5, ends: 1, end: 2, topPass: 1 },
      { turns: 1, ends: 0, end: 1, topPass: 3 },
      { turns: 0.5, ends: 0, end: 1, topPass: 4 },
    ]);
    expect(bare('right')).toEqual([
      { turns: 1, ends: -1, end: 5, topPass: 2 },
      { turns: 1, ends: 0, end: 4, topPass: 4 },
    ]);
  });

  it('says pairs of steps once, with how many times', () => {
    const [out, back] = [
      { turns: 1, ends: 1 },
      { turns: 1, ends: -1 },
    ];
    expect(scheduleWords([{ turns: 0.5, ends: 0 }, out, back, out, back, out, back, { turns: 1, ends: 0 }])).toBe(
      'half a turn; (1 turn, then out 1 end; 1 turn, then in 1 end) × 3; 1 turn',
    );
    expect(scheduleWords([out, back, { turns: 1, ends: 0 }])).toBe(
      '1 turn, then out 1 end; 1 turn, then in 1 end; 1 turn',
    );
  });

  it('says groups of steps once, and what is said is what is woven', () => {
    const [out, back] = [
      { turns: 2, ends: 1 },
      { turns: 1, ends: -1 },
    ];
    expect(scheduleWords([out, out, back, out, out, back, { turns: 3, ends: 0 }])).toBe(
      '(2 turns, then out 1 end; 2 turns, then out 1 end; 1 turn, then in 1 end) × 2; 3 turns',
    );
    const step = fc.record({ turns: fc.constantFrom(0.5, 1, 2, 3), ends: fc.integer({ min: -2, max: 2 }) });
    const repeated = fc.array(
      fc.record({ group: fc.array(step, { minLength: 1, maxLength: 8 }), times: fc.integer({ min: 1, max: 5 }) }),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(repeated, (groups) => {
        const steps = groups.flatMap(({ group, times }) => Array.from({ length: times }, () => group).flat());
        expect(readWords([`Left edge: ${scheduleWords(steps)}.`]).left).toEqual(steps);
      }),
    );
  });

  it('says them as a weaver does', () => {
    expect(
      scheduleWords([
        { turns: 2, ends: -1 },
        ...new Array(15).fill({ turns: 3, ends: -1 }),
        { turns: 1, ends: 2 },
        { turns: 0.5, ends: 0 },
      ]),
    ).toBe('2 turns, then in 1 end; 3 turns, then in 1 end × 15; 1 turn, then out 2 ends; half a turn');
  });
});

describe('two halves', () => {
  it('have the same schedule at their mirrored edges, turn for turn', () => {
    // Two right triangles at the selvedges, each other's image.
    const corner = (side: 1 | -1) => ({
      kind: 'poly' as const,
      pts: [
        [side * 100.4, 5],
        [0, 5],
        [side * 100.4, 123.1],
      ] as [number, number][],
      yarn: 2,
    });
    const piece = flatPiece({
      ends: 31,
      pitch: 6.35,
      passes: 189,
      passHeight: 1.06,
      header: 4,
      shapes: [corner(-1), corner(1)],
    });
    const blocks = planPiece(piece).blocks.filter((block) => block.area === 1 || block.area === 2);
    expect(blocks).toHaveLength(2);
    const [left, right] = [...blocks].sort((one, other) => one.start.end - other.start.end);
    expect(left!.partner).toBe(right!.order);
    expect(whole(left!.right)).toEqual(whole(right!.left));
    const counts = whole(left!.right).map((step) => step.turns);
    expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(1);
  });
});
