import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Piece } from '../../src/core/model/piece.ts';
import { mm } from '../../src/core/model/units.ts';
import { rowsInOrder } from '../../src/core/order/rowsInOrder.ts';
import { type Plan, planPiece } from '../../src/core/plan/planPiece.ts';
import { replanEffect } from '../../src/core/replan/replanEffect.ts';
import { arbitraryFlatPiece, flatPiece } from '../chart/simplePiece.ts';

/** The fell when the first so many passes of a plan are woven. */
function fellAfter(plan: Plan, passesDone: number): number[] {
  const fell = new Array<number>(plan.chart.ends).fill(0);
  for (const { block, row } of rowsInOrder(plan.blocks, plan.sequence).slice(0, passesDone)) {
    const { pass, from, to } = plan.blocks[block]!.rows[row]!;
    for (let end = Math.min(from, to); end <= Math.max(from, to); end++) fell[end] = pass + 1;
  }
  return fell;
}

/** The piece with its rest planned anew after so many passes, all of them woven by the same beat. */
function withBeat(piece: Piece, plan: Plan, passesDone: number, passHeight: number): Piece {
  const highest = Math.max(...fellAfter(plan, passesDone));
  const replanned = {
    at: '2026-11-25T10:00:00.000Z',
    passesDone,
    measured: { passes: highest, height: highest * passHeight },
    passHeightBefore: piece.cloth.passHeight,
  };
  const cloth = { ...piece.cloth, passHeight: mm(passHeight), passHeightSource: 'measured' as const };
  return { ...piece, cloth: { ...cloth, replans: [replanned] } };
}

describe('planning the rest again', () => {
  it('leaves what is woven, can be woven on top of it, and fills the whole cloth', () => {
    fc.assert(
      fc.property(
        arbitraryFlatPiece({ ends: 40, passes: 160 }),
        fc.double({ min: 0.02, max: 0.95, noNaN: true }),
        fc.double({ min: 0.85, max: 1.2, noNaN: true }),
        (flat, share, beat) => {
          const piece = flatPiece(flat);
          const before = planPiece(piece);
          const rows = before.blocks.reduce((sum, block) => sum + block.rows.length, 0);
          const done = Math.max(1, Math.floor(rows * share));
          const fell = fellAfter(before, done);
          const highest = Math.max(...fell);
          const passHeight = piece.cloth.passHeight * beat;
          const after = planPiece(withBeat(piece, before, done, passHeight));
          for (let cell = 0; cell < highest * flat.ends; cell++) {
            if (after.chart.cells[cell] !== before.chart.cells[cell]) throw new Error(`cell ${cell} changed`);
          }
          expect(fellAfter(after, done)).toEqual(fell);
          const now = new Array<number>(flat.ends).fill(0);
          for (const { block, row } of rowsInOrder(after.blocks, after.sequence)) {
            const { pass, from, to } = after.blocks[block]!.rows[row]!;
            const earlier = after.blocks[block]!.rows[row - 1];
            if (earlier !== undefined && earlier.to !== from) throw new Error(`block ${block} row ${row} jumps`);
            for (let end = Math.min(from, to); end <= Math.max(from, to); end++) {
              if (now[end] !== pass) throw new Error(`end ${end} at pass ${pass} lies over a gap`);
              now[end] = pass + 1;
            }
          }
          const effect = replanEffect(
            { piece, ...before },
            { piece: withBeat(piece, before, done, passHeight), ...after },
            fell,
          );
          expect(now).toEqual(new Array(flat.ends).fill(effect.passes.now));
          const tallest = Math.max(passHeight, highest * passHeight - piece.cloth.height);
          expect(Math.abs(effect.height.now - piece.cloth.height)).toBeLessThanOrEqual(tallest + 1e-9);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('lands a shape still to come at its planned height, to half a pass, and says what that changes', () => {
    const piece = flatPiece({
      ends: 33,
      pitch: 6.35,
      passes: 240,
      passHeight: 1.06,
      shapes: [{ kind: 'band', y: [150, 190], yarn: 2 }],
    });
    const before = planPiece(piece);
    const softer = withBeat(piece, before, 100, 1.14);
    const after = planPiece(softer);
    const effect = replanEffect({ piece, ...before }, { piece: softer, ...after }, fellAfter(before, 100));
    const [landing] = effect.landings;
    expect(Math.abs(landing!.now.bottom - 150)).toBeLessThanOrEqual(1.14 / 2 + 1e-9);
    expect(Math.abs(landing!.now.top - 190)).toBeLessThanOrEqual(1.14 / 2 + 1e-9);
    // Kept as it was, the softer beat would lift it by about a thirteenth of its height.
    expect(landing!.unchanged.bottom - landing!.planned.bottom).toBeGreaterThan(8);
    expect(effect.passes.now).toBeLessThan(effect.passes.planned);
    expect(effect.hours.now).toBeLessThan(effect.hours.planned);
    expect(effect.yarns[0]!.now).not.toBe(effect.yarns[0]!.planned);
    expect(effect.yarns[3]!.now).toBe(0);
  });
});
