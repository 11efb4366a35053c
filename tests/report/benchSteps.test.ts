import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formInBox, plainShape } from '../../src/core/cartoon/newShape.ts';
import type { Boundary } from '../../src/core/model/piece.ts';
import type { Block } from '../../src/core/model/plan.ts';
import { planPiece } from '../../src/core/plan/planPiece.ts';
import { type BenchStep, benchSteps, placeInStep, type StepPart, timesOver } from '../../src/core/report/benchSteps.ts';
import { stepRuns } from '../../src/core/report/stepRuns.ts';
import { type WorkTurn, workSteps, workTurns } from '../../src/core/report/workTurns.ts';
import { flatPiece } from '../chart/simplePiece.ts';

const bare = flatPiece({ ends: 31, pitch: 6, passes: 120, passHeight: 1, header: 4, shapes: [] });

function planned(boundary: Boundary, form: ReturnType<typeof formInBox>) {
  const { blocks, sequence } = planPiece({ ...bare, shapes: [{ ...plainShape('a', 'Wall', 'y2', form), boundary }] });
  return { blocks, turns: workTurns(blocks, sequence) };
}

const plannedHill = (boundary: Boundary, half: number, tall: number) =>
  planned(boundary, formInBox('hill', { left: -half, right: half, bottom: 20, top: 20 + tall }));
const plannedWall = (boundary: Boundary, left: number, right: number, tall: number) =>
  planned(boundary, formInBox('rectangle', { left, right, bottom: 20, top: 20 + tall }));

const boundaries = fc.constantFrom<Boundary>('slit', 'shared-end', 'interlocked', 'dovetailed');
const plans = fc.oneof(
  fc
    .record({ boundary: boundaries, half: fc.integer({ min: 12, max: 80 }), tall: fc.integer({ min: 10, max: 90 }) })
    .map(({ boundary, half, tall }) => plannedHill(boundary, half, tall)),
  fc
    .record({
      boundary: boundaries,
      left: fc.integer({ min: -80, max: -12 }),
      right: fc.integer({ min: 12, max: 80 }),
      tall: fc.integer({ min: 10, max: 90 }),
    })
    .map(({ boundary, left, right, tall }) => plannedWall(boundary, left, right, tall)),
);

/** What a weaver does who follows the steps: every round as often as it is said. */
const followed = (steps: readonly BenchStep[]): StepPart[] =>
  steps.flatMap((step) => Array.from({ length: timesOver(step) }, () => step.rounds.flat()).flat());
const part = ({ block, passes, left, right }: StepPart): StepPart => ({ block, passes, left, right });
/** A block on its own may end a step with a single pass: there only its ends are the round's. */
const span = ({ block, left, right }: StepPart) => ({ block, left, right });

const isTogether = (step: BenchStep) => step.rounds.some((round) => round.length > 1);

/** Two wefts that rise together, round by round as told. */
function twoTogether(rounds: readonly (readonly StepPart[])[]) {
  const block = (order: number) => ({ order, together: [1 - order] }) as unknown as Block;
  const turns = rounds.flatMap((round, at) =>
    round.map((each): WorkTurn => ({ ...each, row: 2 * at, pass: 2 * at, from: each.left, to: each.right })),
  );
  return { blocks: [block(0), block(1)], turns };
}

const someRound = fc.tuple(fc.integer({ min: 5, max: 8 }), fc.constantFrom<1 | 2>(1, 2)).map(([border, passes]) =>
  [0, 1].map((block) => ({
    block,
    passes,
    left: block === 0 ? 0 : border,
    right: block === 0 ? border - 1 : 20,
  })),
);
const someRounds = fc
  .array(
    fc.record({
      group: fc.array(someRound, { minLength: 1, maxLength: 8 }),
      times: fc.integer({ min: 1, max: 6 }),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map((groups) => groups.flatMap(({ group, times }) => Array.from({ length: times }, () => group).flat()));

describe('steps at the bench', () => {
  it('tell every turn once, in order, and each step is its rounds over and over', () => {
    fc.assert(
      fc.property(plans, ({ blocks, turns }) => {
        const steps = benchSteps(turns, blocks);
        expect(followed(steps).map(span)).toEqual(turns.map(span));
        let next = 0;
        for (const step of steps) {
          expect(step.firstTurn).toBe(next);
          if (isTogether(step)) expect(followed([step])).toEqual(turns.slice(next, next + step.turns).map(part));
          next += step.turns;
        }
      }),
      { numRuns: 60 },
    );
  });

  it('tell rounds that repeat in groups of up to eight as the turns they are', () => {
    fc.assert(
      fc.property(someRounds, (rounds) => {
        const { blocks, turns } = twoTogether(rounds);
        expect(followed(benchSteps(turns, blocks))).toEqual(turns.map(part));
      }),
      { numRuns: 300 },
    );
  });

  it('say of any turn which round and which part it is, so that a count goes on where it stopped', () => {
    fc.assert(
      fc.property(plans, ({ blocks, turns }) => {
        for (const step of benchSteps(turns, blocks)) {
          for (let turn = 0; turn < step.turns; turn++) {
            const place = placeInStep(step, turn);
            expect(span(step.rounds[place.round]![place.part]!)).toEqual(span(turns[step.firstTurn + turn]!));
            const before = step.rounds.slice(0, place.round).flat().length + place.part;
            expect(place.time * step.rounds.flat().length + before).toBe(turn);
          }
        }
      }),
      { numRuns: 20 },
    );
  });

  it('are those of the list where nothing rises together', () => {
    const { blocks, turns } = plannedHill('slit', 50, 60);
    const steps = benchSteps(turns, blocks).map(({ rounds: _, ...step }) => step);
    expect(steps).toEqual(workSteps(turns));
  });

  it('agree with the steps of each block on its own, as listed and printed', () => {
    fc.assert(
      fc.property(plans, ({ blocks, turns }) => {
        const parts = followed(benchSteps(turns, blocks)).map((each, at) => ({ ...each, passes: turns[at]!.passes }));
        const passes = (spans: readonly { left: number; right: number; count: number }[]) =>
          spans.flatMap(({ left, right, count }) => Array.from({ length: count }, () => `${left} ${right}`));
        for (const block of blocks.keys()) {
          const atBench = parts.filter((each) => each.block === block);
          const listed = stepRuns(turns.filter((turn) => turn.block === block)).flatMap(({ steps, times }) =>
            Array.from({ length: times }, () => steps).flat(),
          );
          expect(passes(listed.map(({ left, right, turns: count }) => ({ left, right, count: 2 * count })))).toEqual(
            passes(atBench.map(({ left, right, passes: count }) => ({ left, right, count }))),
          );
        }
      }),
      { numRuns: 30 },
    );
  });

  it('are one step for wefts that rise together, each weft in it, for as long as no edge moves', () => {
    const { blocks, turns } = plannedHill('interlocked', 50, 60);
    const together = benchSteps(turns, blocks).filter(isTogether);
    const members = new Set(together[1]!.rounds.flat().map((each) => each.block));
    expect(members).toEqual(new Set([together[1]!.block, ...blocks[together[1]!.block]!.together]));
    // A side that stands for several turns makes a step of several rounds.
    expect(Math.max(...together.map(timesOver))).toBeGreaterThan(1);
  });

  it('take rounds together where wefts alternate at an upright border, so that a wall is a few long steps', () => {
    for (const [boundary, period, most] of [
      ['shared-end', 2, 4],
      ['dovetailed', 4, 7],
    ] as const) {
      const { blocks, turns } = plannedWall(boundary, -40, 45, 60);
      const together = benchSteps(turns, blocks).filter(isTogether);
      const longest = together.reduce((one, other) => (other.turns > one.turns ? other : one));
      expect(together.length).toBeLessThanOrEqual(most);
      expect(longest.rounds).toHaveLength(period);
      expect(timesOver(longest)).toBeGreaterThan(5);
      // Every round of the repeat holds every weft.
      const wefts = longest.rounds.map((round) => new Set(round.map((each) => each.block)));
      for (const each of wefts) expect(each).toEqual(wefts[0]);
    }
  });

  it('read like this up a dovetailed wall', async () => {
    const { blocks, turns } = plannedWall('dovetailed', -40, 45, 60);
    const lines = benchSteps(turns, blocks).map((step) => {
      const rounds = step.rounds.map((round) =>
        round
          .map(({ block, passes, left, right }) => {
            const size = passes === 1 ? 'a pass' : 'a turn';
            return `${blocks[block]!.name} ${left + 1} to ${right + 1}, ${size}`;
          })
          .join('; '),
      );
      const repeat = rounds.length === 1 ? rounds : rounds.map((round, at) => `  ${at + 1}: ${round}`);
      return `turn ${step.firstTurn + 1}, ${timesOver(step)} times:${rounds.length === 1 ? ' ' : '\n'}${repeat.join('\n')}`;
    });
    const edges = blocks.map((block) => `${block.name}. ${block.words.join(' ')}`);
    await expect(`${lines.join('\n')}\n\n${edges.join('\n')}\n`).toMatchFileSnapshot('dovetailedWall.txt');
  });
});
