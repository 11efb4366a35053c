import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/core/model/units.ts';
import { planPiece } from '../../src/core/plan/planPiece.ts';
import { replan } from '../../src/core/replan/replan.ts';
import { arbitraryFlatPiece, flatPiece } from '../chart/simplePiece.ts';

/** The fell when the first rows of a plan are woven. */
function fellAfter(piece: ReturnType<typeof flatPiece>, share: number): number[] {
  const plan = planPiece(piece);
  const rows = plan.blocks.flatMap((block) => block.rows);
  const fell = new Array<number>(plan.chart.ends).fill(0);
  for (const { pass, from, to } of rows.slice(0, Math.floor(rows.length * share))) {
    for (let end = Math.min(from, to); end <= Math.max(from, to); end++) fell[end] = pass + 1;
  }
  return fell;
}

describe('planning the rest again', () => {
  it('leaves what is woven, can be woven on top of it, and fills the whole cloth', () => {
    fc.assert(
      fc.property(
        arbitraryFlatPiece({ ends: 40, passes: 160 }),
        fc.double({ min: 0, max: 0.95, noNaN: true }),
        fc.double({ min: 0.85, max: 1.2, noNaN: true }),
        (flat, share, beat) => {
          const piece = flatPiece(flat);
          const old = planPiece(piece).chart;
          const fell = fellAfter(piece, share);
          const highest = Math.max(...fell);
          const passHeight = piece.cloth.passHeight * beat;
          const outcome = replan(piece, {
            fell,
            measured: { passes: Math.max(1, highest), height: Math.max(1, highest) * passHeight },
            passHeight: mm(passHeight),
          });
          if (!outcome.ok) throw new Error(outcome.problem.sentence);
          const { chart, blocks, passes, height } = outcome.value;
          for (let cell = 0; cell < highest * chart.ends; cell++) {
            if (chart.cells[cell] !== old.cells[cell]) throw new Error(`cell ${cell} changed`);
          }
          const now = [...fell];
          for (const block of blocks) {
            for (const { pass, from, to } of block.rows) {
              for (let end = Math.min(from, to); end <= Math.max(from, to); end++) {
                if (now[end] !== pass) throw new Error(`end ${end} at pass ${pass} lies over a gap`);
                now[end] = pass + 1;
              }
            }
          }
          expect(now).toEqual(new Array(chart.ends).fill(passes.now));
          const tallest = Math.max(passHeight, highest * passHeight - piece.cloth.height);
          expect(Math.abs(height.now - piece.cloth.height)).toBeLessThanOrEqual(tallest + 1e-9);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('lands a shape still to come at its planned height, to half a pass', () => {
    const piece = flatPiece({
      ends: 33,
      pitch: 6.35,
      passes: 240,
      passHeight: 1.06,
      shapes: [{ kind: 'band', y: [150, 190], yarn: 2 }],
    });
    const outcome = replan(piece, {
      fell: new Array(33).fill(100),
      measured: { passes: 100, height: 114 },
      passHeight: mm(1.14),
    });
    if (!outcome.ok) throw new Error(outcome.problem.sentence);
    const [landing] = outcome.value.landings;
    expect(Math.abs(landing!.now.bottom - 150)).toBeLessThanOrEqual(1.14 / 2 + 1e-9);
    expect(Math.abs(landing!.now.top - 190)).toBeLessThanOrEqual(1.14 / 2 + 1e-9);
    // Kept as it was, the softer beat would lift it by about a thirteenth of its height.
    expect(landing!.unchanged.bottom - landing!.planned.bottom).toBeGreaterThan(8);
    expect(outcome.value.passes.now).toBeLessThan(outcome.value.passes.planned);
    expect(outcome.value.yarns[0]!.now).not.toBe(outcome.value.yarns[0]!.planned);
  });

  it('changes nothing when the beat is as planned', () => {
    fc.assert(
      fc.property(arbitraryFlatPiece({ ends: 30, passes: 100 }), (flat) => {
        const piece = flatPiece(flat);
        const outcome = replan(piece, {
          fell: new Array(flat.ends).fill(0),
          measured: { passes: 1, height: piece.cloth.passHeight },
          passHeight: piece.cloth.passHeight,
        });
        if (!outcome.ok) throw new Error(outcome.problem.sentence);
        expect(outcome.value.passes.now).toBe(outcome.value.passes.planned);
        expect(outcome.value.height.unchanged).toBeCloseTo(outcome.value.height.planned, 9);
      }),
      { numRuns: 30 },
    );
  });

  it('asks for the count when the fell is not where the plan stops', () => {
    const piece = flatPiece({ ends: 10, pitch: 5, passes: 40, passHeight: 1, shapes: [] });
    const outcome = replan(piece, {
      fell: [3, 3, 3, 3, 3, 4, 4, 4, 4, 4],
      measured: { passes: 3, height: 3 },
      passHeight: mm(1),
    });
    expect(outcome.ok).toBe(false);
  });
});
