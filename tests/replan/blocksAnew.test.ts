import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Piece } from '../../src/core/model/piece.ts';
import { mm } from '../../src/core/model/units.ts';
import { rowsInOrder } from '../../src/core/order/rowsInOrder.ts';
import { blocksAnew } from '../../src/core/plan/blocksAnew.ts';
import { type Plan, planPiece } from '../../src/core/plan/planPiece.ts';
import { arbitraryFlatPiece, flatPiece } from '../chart/simplePiece.ts';

function withBeat(piece: Piece, plan: Plan, passesDone: number, passHeight: number): Piece {
  const woven = rowsInOrder(plan.blocks, plan.sequence).slice(0, passesDone);
  const passes = Math.max(...woven.map(({ block, row }) => plan.blocks[block]!.rows[row]!.pass + 1));
  const replanned = {
    at: '2026-11-25T10:00:00.000Z',
    passesDone,
    measured: { passes, height: passes * passHeight },
    passHeightBefore: piece.cloth.passHeight,
  };
  const cloth = { ...piece.cloth, passHeight: mm(passHeight), passHeightSource: 'measured' as const };
  return { ...piece, cloth: { ...cloth, replans: [replanned] } };
}

describe('the blocks that are new since the rest was planned again', () => {
  it('are none where it never was, and none where the beat is the planned one', () => {
    fc.assert(
      fc.property(
        arbitraryFlatPiece({ ends: 24, passes: 100 }),
        fc.double({ min: 0.05, max: 0.9, noNaN: true }),
        (flat, share) => {
          const piece = flatPiece(flat);
          const plan = planPiece(piece);
          expect(blocksAnew(piece, plan.blocks)).toEqual([]);
          const rows = plan.blocks.reduce((sum, block) => sum + block.rows.length, 0);
          const again = withBeat(piece, plan, Math.max(1, Math.floor(rows * share)), piece.cloth.passHeight);
          expect(blocksAnew(again, planPiece(again).blocks)).toEqual([]);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('are never among those that are woven', () => {
    fc.assert(
      fc.property(
        arbitraryFlatPiece({ ends: 24, passes: 100 }),
        fc.double({ min: 0.05, max: 0.9, noNaN: true }),
        fc.double({ min: 0.8, max: 1.25, noNaN: true }),
        (flat, share, beat) => {
          const piece = flatPiece(flat);
          const plan = planPiece(piece);
          const rows = plan.blocks.reduce((sum, block) => sum + block.rows.length, 0);
          const done = Math.max(1, Math.floor(rows * share));
          const again = withBeat(piece, plan, done, piece.cloth.passHeight * beat);
          const { blocks } = planPiece(again);
          const anew = new Set(blocksAnew(again, blocks));
          let passes = 0;
          for (const [place, block] of blocks.entries()) {
            passes += block.rows.length;
            if (passes <= done) expect(anew.has(place)).toBe(false);
          }
        },
      ),
      { numRuns: 30 },
    );
  });
});
