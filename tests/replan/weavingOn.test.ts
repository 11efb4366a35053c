import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Piece } from '../../src/core/model/piece.ts';
import { mm } from '../../src/core/model/units.ts';
import { rowsInOrder } from '../../src/core/order/rowsInOrder.ts';
import { type Plan, planPiece } from '../../src/core/plan/planPiece.ts';
import { arbitraryFlatPiece, flatPiece } from '../chart/simplePiece.ts';

/** The piece planned anew after so much of its work, with a beat so many times the planned one. */
function plannedAnew(piece: Piece, plan: Plan, share: number, beat: number): Piece {
  const rows = rowsInOrder(plan.blocks, plan.sequence);
  const passesDone = Math.max(1, Math.floor(rows.length * share));
  let highest = 0;
  for (const { block, row } of rows.slice(0, passesDone)) {
    highest = Math.max(highest, plan.blocks[block]!.rows[row]!.pass + 1);
  }
  const passHeight = mm(piece.cloth.passHeight * beat);
  const record = {
    at: '2026-11-25T10:00:00Z',
    passesDone,
    measured: { passes: highest, height: highest * passHeight },
    passHeightBefore: piece.cloth.passHeight,
  };
  return { ...piece, cloth: { ...piece.cloth, passHeight, replans: [...(piece.cloth.replans ?? []), record] } };
}

const rowsOf = (plan: Plan) =>
  rowsInOrder(plan.blocks, plan.sequence).map(({ block, row }) => ({
    ...plan.blocks[block]!.rows[row]!,
    yarn: plan.blocks[block]!.yarn,
  }));

describe('weaving on after the rest was planned anew', () => {
  it('keeps every row woven, weaves the rest over no gap, and fills the chart, also a second time', () => {
    fc.assert(
      fc.property(
        arbitraryFlatPiece({ ends: 30, passes: 120 }),
        fc.array(
          fc.record({
            share: fc.double({ min: 0, max: 0.95, noNaN: true }),
            beat: fc.double({ min: 0.85, max: 1.2, noNaN: true }),
          }),
          { minLength: 1, maxLength: 2 },
        ),
        (flat, times) => {
          let piece: Piece = flatPiece(flat);
          let plan = planPiece(piece);
          let stands = 0;
          for (const { share, beat } of times) {
            const total = rowsOf(plan).length;
            const next = plannedAnew(piece, plan, Math.max(share, stands / total), beat);
            stands = next.cloth.replans!.at(-1)!.passesDone;
            const anew = planPiece(next);
            expect(rowsOf(anew).slice(0, stands)).toEqual(rowsOf(plan).slice(0, stands));
            [piece, plan] = [next, anew];
          }
          const { ends, passes, cells } = plan.chart;
          const fell = new Array<number>(ends).fill(0);
          for (const { pass, from, to, yarn } of rowsOf(plan)) {
            for (let end = Math.min(from, to); end <= Math.max(from, to); end++) {
              if (fell[end] !== pass) throw new Error(`end ${end} at pass ${pass} lies over a gap`);
              if (cells[pass * ends + end] !== yarn) throw new Error(`end ${end}, pass ${pass} is in another yarn`);
              fell[end] = pass + 1;
            }
          }
          expect(fell).toEqual(new Array(ends).fill(passes));
          for (const [place, block] of plan.blocks.entries()) {
            expect(block.order).toBe(place);
            for (const other of block.after) expect(other).toBeLessThan(place);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('lets the cloth end within a pass of its planned height', () => {
    const piece = flatPiece({
      ends: 33,
      pitch: 6.35,
      passes: 240,
      passHeight: 1.06,
      shapes: [{ kind: 'band', y: [150, 190], yarn: 2 }],
    });
    const softer = plannedAnew(piece, planPiece(piece), 0.4, 1.14 / 1.06);
    const { chart, measured } = planPiece(softer);
    const height = measured!.height + (chart.passes - measured!.passes) * softer.cloth.passHeight;
    expect(Math.abs(height - piece.cloth.height)).toBeLessThanOrEqual(softer.cloth.passHeight / 2 + 1e-9);
  });
});
