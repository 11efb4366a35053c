import { describe, expect, it } from 'vitest';
import type { Boundary } from '../../src/core/model/piece.ts';
import { planPiece } from '../../src/core/plan/planPiece.ts';
import { flatPiece } from '../chart/simplePiece.ts';

/** A wall 12 ends wide and 80 passes tall on a ground of 30 ends. */
function wall(boundary: Boundary, pitch = 6) {
  const piece = flatPiece({
    ends: 30,
    pitch,
    passes: 120,
    passHeight: 1,
    shapes: [
      {
        kind: 'poly',
        pts: [
          [-6.2 * pitch, 20],
          [6.2 * pitch, 20],
          [6.2 * pitch, 100],
          [-6.2 * pitch, 100],
        ],
        yarn: 2,
      },
    ],
  });
  return planPiece({ ...piece, shapes: piece.shapes.map((shape) => ({ ...shape, boundary })) });
}

const edges = (plan: ReturnType<typeof wall>) =>
  plan.blocks.filter((block) => block.area === 1).flatMap((block) => [block.left, block.right]);

describe('what holds two areas together', () => {
  it('leaves slits where it is a slit, and says how long and what to do', () => {
    const plan = wall('slit');
    expect(plan.sequence).toEqual([]);
    expect(plan.slits.map((slit) => [slit.between, slit.fromPass, slit.toPass, slit.lengthMm])).toEqual([
      [[8, 9], 20, 99, 80],
      [[20, 21], 20, 99, 80],
    ]);
    for (const slit of plan.slits) expect(slit.remedy).toContain('sew it before hanging');
    for (const edge of edges(plan)) expect(edge.every((step) => step.ends === 0)).toBe(true);
  });

  it('turns both wefts on one end, a turn each, where the end is shared', () => {
    const plan = wall('shared-end');
    expect(plan.slits).toEqual([]);
    const inner = edges(plan).map((steps) => steps.filter((step) => step.turns !== 0.5).slice(1, -1));
    for (const steps of inner) {
      expect(steps.length).toBeGreaterThan(30);
      expect(new Set(steps.map((step) => step.turns))).toEqual(new Set([1]));
      expect(new Set(steps.map((step) => Math.abs(step.ends)))).toEqual(new Set([1]));
    }
    const shape = plan.areas[0]!;
    expect(Math.abs(shape.wovenMm2 / shape.drawnMm2 - 1)).toBeLessThan(0.05);
    riseTogether(plan);
  });

  it('makes longer teeth where the areas are dovetailed, shorter on a coarse sett', () => {
    const teeth = (pitch: number) =>
      new Set(
        edges(wall('dovetailed', pitch)).flatMap((steps) =>
          steps
            .filter((step) => step.turns !== 0.5)
            .slice(1, -1)
            .map((step) => step.turns),
        ),
      );
    // Every second turn under 10 ends to the inch, every fourth above (Art Institute of Chicago).
    expect(teeth(6)).toEqual(new Set([2]));
    expect(teeth(2)).toEqual(new Set([4]));
  });

  it('says once what holds both edges of a block, and at which side where one alone is held', () => {
    const [of1, of0] = [1, 0].map((area) => wall('dovetailed').blocks.filter((block) => block.area === area));
    const held = (blocks: typeof of1) =>
      blocks!.flatMap(({ remarks }) => remarks.filter((remark) => remark.includes('both wefts turn on one end')));
    expect(new Set(held(of1))).toEqual(
      new Set(['At both sides, where the edge stands upright, both wefts turn on one end, several turns each.']),
    );
    expect(of1!.length).toBe(held(of1).length);
    expect(new Set(held(of0).map((remark) => remark.split(',')[0]))).toEqual(new Set(['At the left', 'At the right']));
  });

  it('keeps the chart of a slit where wefts interlock, but no slit, and raises them together', () => {
    const plan = wall('interlocked');
    expect(plan.chart.cells).toEqual(wall('slit').chart.cells);
    expect(plan.slits).toEqual([]);
    riseTogether(plan);
    const shape = plan.blocks.find((block) => block.area === 1)!;
    expect(shape.remarks.join(' ')).toContain('loop the weft');
    expect(shape.words.join(' ')).toContain('Rises together');
    // Teeth lie on each other in turn: neither block is there before the other.
    expect(plan.overhangs).toEqual([]);
  });
});

/** Beside a linked border neither weft is ever more than a turn ahead. */
function riseTogether(plan: ReturnType<typeof wall>): void {
  const shape = plan.blocks.filter((block) => block.area === 1);
  expect(shape.every((block) => block.together.length === 2)).toBe(true);
  const height = new Map<number, number>();
  for (const { block, row } of plan.sequence) {
    const { pass } = plan.blocks[block]!.rows[row]!;
    height.set(block, pass);
    for (const other of plan.blocks[block]!.together) {
      if (pass < 22 || pass > 97) continue;
      const isNeighbour = plan.blocks[block]!.area === 1 || plan.blocks[other]!.area === 1;
      if (isNeighbour) expect(pass - (height.get(other) ?? 0)).toBeLessThanOrEqual(2);
    }
  }
}
