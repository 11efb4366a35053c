import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formInBox, plainShape } from '../../src/core/cartoon/newShape.ts';
import type { Boundary } from '../../src/core/model/piece.ts';
import { planPiece } from '../../src/core/plan/planPiece.ts';
import { benchSteps } from '../../src/core/report/benchSteps.ts';
import { workSteps, workTurns } from '../../src/core/report/workTurns.ts';
import { flatPiece } from '../chart/simplePiece.ts';

function plannedHill(boundary: Boundary, half: number, tall: number) {
  const piece = flatPiece({ ends: 31, pitch: 6, passes: 120, passHeight: 1, header: 4, shapes: [] });
  const form = formInBox('hill', { left: -half, right: half, bottom: 20, top: 20 + tall });
  const { blocks, sequence } = planPiece({ ...piece, shapes: [{ ...plainShape('a', 'Hill', 'y2', form), boundary }] });
  return { blocks, turns: workTurns(blocks, sequence) };
}

const hills = fc.record({
  boundary: fc.constantFrom<Boundary>('slit', 'shared-end', 'interlocked', 'dovetailed'),
  half: fc.integer({ min: 12, max: 80 }),
  tall: fc.integer({ min: 10, max: 90 }),
});

describe('steps at the bench', () => {
  it('tell every turn once, in order, and each step is its round over and over', () => {
    fc.assert(
      fc.property(hills, ({ boundary, half, tall }) => {
        const { blocks, turns } = plannedHill(boundary, half, tall);
        let next = 0;
        for (const step of benchSteps(turns, blocks)) {
          expect(step.firstTurn).toBe(next);
          expect(step.turns % step.round.length).toBe(0);
          for (let at = 0; at < step.turns; at++) {
            const part = step.round[at % step.round.length]!;
            const { block, left, right } = turns[next + at]!;
            expect({ block, left, right }).toEqual({ block: part.block, left: part.left, right: part.right });
          }
          next += step.turns;
        }
        expect(next).toBe(turns.length);
      }),
      { numRuns: 40 },
    );
  });

  it('are those of the list where nothing rises together', () => {
    const { blocks, turns } = plannedHill('slit', 50, 60);
    const steps = benchSteps(turns, blocks).map(({ round: _, ...step }) => step);
    expect(steps).toEqual(workSteps(turns));
  });

  it('are one step for wefts that rise together, each weft in it, for as long as no edge moves', () => {
    const { blocks, turns } = plannedHill('interlocked', 50, 60);
    const together = benchSteps(turns, blocks).filter((step) => step.round.length > 1);
    const members = new Set(together[1]!.round.map((part) => part.block));
    expect(members).toEqual(new Set([together[1]!.block, ...blocks[together[1]!.block]!.together]));
    // A side that stands for several turns makes a step of several rounds.
    expect(Math.max(...together.map((step) => step.turns / step.round.length))).toBeGreaterThan(1);
  });

  it('take two rounds together where wefts go over a shared end in alternation, so that a wall is a few long steps', () => {
    const wall = formInBox('rectangle', { left: -40, right: 45, bottom: 20, top: 80 });
    const piece = flatPiece({ ends: 31, pitch: 6, passes: 120, passHeight: 1, header: 4, shapes: [] });
    const shape = { ...plainShape('a', 'Wall', 'y2', wall), boundary: 'shared-end' as const };
    const { blocks, sequence } = planPiece({ ...piece, shapes: [shape] });
    const together = benchSteps(workTurns(blocks, sequence), blocks).filter((step) => step.round.length > 1);
    const longest = together.reduce((one, other) => (other.turns > one.turns ? other : one));
    expect(together.length).toBeLessThanOrEqual(4);
    expect(longest.turns / longest.round.length).toBeGreaterThan(10);
    // Both halves of the round hold every weft.
    const half = longest.round.length / 2;
    const wefts = (parts: typeof longest.round) => new Set(parts.map((part) => part.block));
    expect(wefts(longest.round.slice(0, half))).toEqual(wefts(longest.round.slice(half)));
  });
});
