import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Piece } from '../../src/core/model/piece.ts';
import { type Plan, planPiece } from '../../src/core/plan/planPiece.ts';
import { parseBrief, pieceFromBrief } from '../../src/core/project/brief.ts';
import { planJson } from '../../src/core/report/planJson.ts';
import { arbitraryFlatPiece, flatPiece } from '../chart/simplePiece.ts';

const briefs = ['photos', 'sequence'].flatMap((folder) => {
  const path = join(import.meta.dirname, '../fixtures', folder);
  return readdirSync(path)
    .filter((file) => file.endsWith('.brief.json'))
    .map((file) => {
      const brief = parseBrief(JSON.parse(readFileSync(join(path, file), 'utf8')));
      if (!brief.ok) throw new Error(brief.problem.sentence);
      return { file, piece: pieceFromBrief(brief.value, '2026-11-25T09:00:00.000Z') };
    });
});

/** Cheaper than an assertion for every cell. */
function must(holds: boolean, what: string): void {
  if (!holds) throw new Error(what);
}

/** Everything a hand needs of a plan, checked on its rows alone. */
function checkPlan(piece: Piece, plan: Plan): void {
  const { ends, passes, cells } = plan.chart;
  const fell = new Int32Array(ends);
  const woven = new Int32Array(ends * passes).fill(-1);
  const steps =
    plan.sequence.length > 0
      ? plan.sequence
      : plan.blocks.flatMap((block) => block.rows.map((_, row) => ({ block: block.order, row })));
  const nextRow = plan.blocks.map(() => 0);
  const limit = Math.max(2, Math.floor(piece.making.hillLimit / plan.chart.passHeight));
  for (const { block: order, row } of steps) {
    const block = plan.blocks[order]!;
    must(block.order === order && row === nextRow[order]!++, `row ${row} of block ${order} out of turn`);
    const { pass, from, to } = block.rows[row]!;
    const startsLeft = block.start.side === 'left';
    const goesRight = (row % 2 === 0) === startsLeft;
    must(from === to || from < to === goesRight, `block ${order} row ${row} travels the wrong way`);
    const before = block.rows[row - 1];
    must(
      before === undefined
        ? from === block.start.end && to === block.start.to
        : from === before.to && pass === before.pass + 1,
      `block ${order} row ${row} doesn't begin where the last stopped`,
    );
    const low = Math.min(from, to);
    const high = Math.max(from, to);
    const beside = [low - 1, high + 1].filter((end) => end >= 0 && end < ends);
    for (const end of beside) must(pass + 1 - fell[end]! <= limit, `block ${order} is a hill at pass ${pass}`);
    for (let end = low; end <= high; end++) {
      must(fell[end] === pass, `block ${order} lies over a gap at end ${end}, pass ${pass}`);
      fell[end] = pass + 1;
      must(woven[pass * ends + end] === -1, `cell ${end}, ${pass} is woven twice`);
      woven[pass * ends + end] = order;
      must(cells[pass * ends + end] === block.yarn, `cell ${end}, ${pass} in the wrong yarn`);
    }
  }
  expect([...fell]).toEqual(new Array(ends).fill(passes));
  for (const block of plan.blocks) {
    expect(block.start.over).toBe((block.start.end + block.rows[0]!.pass) % 2 === plan.parity);
    for (const under of block.after) expect(under).toBeLessThan(block.order);
    const turns = (side: 'left' | 'right') => block[side].reduce((sum, step) => sum + step.turns, 0);
    // A pass is half a turn at each of its two edges.
    expect(turns('left') * 2).toBe(block.rows.length);
    expect(turns('right') * 2).toBe(block.rows.length);
    expect(block.left.at(-1)!.ends).toBe(0);
    expect(block.right.at(-1)!.ends).toBe(0);
    if (block.partner !== null) expect(plan.blocks[block.partner]!.partner).toBe(block.order);
    if (block.continues !== null) {
      const before = plan.blocks[block.continues]!;
      expect(before.rows.at(-1)!.to).toBe(block.start.end);
      expect(before.rows.at(-1)!.pass).toBe(block.rows[0]!.pass - 1);
    }
  }
  expect(new Set(plan.blocks.map((block) => block.name)).size).toBe(plan.blocks.length);
  for (const join of plan.joins) {
    const row = plan.blocks[join.block]!.rows.find((candidate) => candidate.pass === join.pass)!;
    const low = Math.min(row.from, row.to);
    const high = Math.max(row.from, row.to);
    expect(join.end).toBeGreaterThanOrEqual(low);
    expect(join.end).toBeLessThanOrEqual(high);
    if (high - low >= 4) expect([low, high]).not.toContain(join.end);
  }
}

describe('a plan', () => {
  it('can be woven, row by row, for the sample pieces', () => {
    for (const { piece } of briefs) checkPlan(piece, planPiece(piece));
  });

  it('can be woven for generated pieces, whatever holds the areas together', () => {
    fc.assert(
      fc.property(
        arbitraryFlatPiece({ ends: 60, passes: 240 }),
        fc.array(fc.constantFrom('slit', 'shared-end', 'interlocked', 'dovetailed'), { minLength: 5, maxLength: 5 }),
        fc.boolean(),
        (flat, boundaries, linked) => {
          const piece = flatPiece({ ...flat, header: flat.passes > 20 ? 4 : 0 });
          const shapes = piece.shapes.map((shape, index) => ({
            ...shape,
            boundary: linked ? boundaries[index]! : ('slit' as const),
          }));
          const whole = { ...piece, shapes };
          checkPlan(whole, planPiece(whole));
        },
      ),
      { numRuns: 100 },
    );
  });

  it('is the same to the byte for the same piece', () => {
    for (const { piece } of briefs.slice(0, 4)) expect(planJson(piece)).toBe(planJson(structuredClone(piece)));
  });

  it('names the areas of the lantern as a weaver would, its halves next to each other', () => {
    const { piece } = briefs.find(({ file }) => file === 'seq1.brief.json')!;
    const named = {
      ...piece,
      shapes: piece.shapes.map((shape, index) => ({ ...shape, name: ['Flame', 'Lantern'][index]! })),
    };
    const plan = planPiece(named);
    const names = plan.blocks.map((block) => block.name);
    expect(names).toContain('Header');
    expect(names).toContain('Ground, foot');
    expect(names).toContain('Flame');
    expect(names).toContain('Lantern, foot');
    expect(names).toContain('Ground, head');
    expect(names.filter((name) => name.startsWith('Lantern, left of the flame'))).not.toEqual([]);
    for (const block of plan.blocks.filter((candidate) => candidate.name.includes('left of'))) {
      expect(block.partner).not.toBeNull();
      expect(Math.abs(block.partner! - block.order)).toBe(1);
    }
  });

  it('turns both edges of the flame by the same counts', () => {
    const { piece } = briefs.find(({ file }) => file === 'seq1.brief.json')!;
    const flame = planPiece(piece).blocks.filter((block) => block.area === 1);
    expect(flame).toHaveLength(1);
    const whole = (steps: readonly { turns: number; ends: number }[]) => steps.filter((step) => step.turns !== 0.5);
    expect(whole(flame[0]!.left)).toEqual(whole(flame[0]!.right));
  });
});
