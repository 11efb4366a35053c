import { describe, expect, it } from 'vitest';
import type { Piece } from '../../src/core/model/piece.ts';
import { planPiece } from '../../src/core/plan/planPiece.ts';
import { briefPiece } from '../virtual-weaver/briefPieces.ts';
import { generatedPiece } from '../virtual-weaver/generatedPiece.ts';
import { SeededRandom } from '../virtual-weaver/seededRandom.ts';
import { weavePiece } from '../virtual-weaver/weavePiece.ts';
import { flatPiece } from './simplePiece.ts';

/** A row of slanted boxes in two yarns over another with the yarns exchanged: every corner is a level edge. */
const boxes = (across: number, pitch: number, passHeight: number) => {
  const [ends, passes] = [across * 12, 12];
  const wide = 12 * pitch;
  const shapes = Array.from({ length: across * 4 }, (_, at) => {
    const [column, row] = [at % across, Math.floor(at / across)];
    const [left, bottom] = [column * wide - (ends * pitch) / 2, row * 3 * passHeight];
    const top = bottom + 3 * passHeight;
    const pts = [
      [left, bottom],
      [left + wide, bottom],
      [left + wide - pitch, top],
      [left - pitch, top],
    ] as const;
    return { kind: 'poly' as const, pts, yarn: (column + row) % 2 };
  });
  return flatPiece({ ends, passes, pitch, passHeight, shapes });
};

/** Shapes out by more than 1 % and a cell for each row with an edge, though the middles of the cells are not. */
function lostByStepping(piece: Piece): string[] {
  const { areas, chart } = planPiece(piece);
  return areas.flatMap(({ shape, drawnMm2, wovenMm2, middlesMm2, boundaryRows }) => {
    const allowed = Math.max(0.01 * drawnMm2, boundaryRows * chart.pitch * chart.passHeight) + 1e-6;
    const canBeKept = Math.abs(middlesMm2 - drawnMm2) <= allowed;
    return canBeKept && Math.abs(wovenMm2 - drawnMm2) > allowed ? [shape] : [];
  });
}

describe('areas of shapes', () => {
  it('stay within 1 % or a cell for each row with an edge where level edges come together', () => {
    for (const across of [2, 3, 4, 5]) {
      const [pitch, passHeight] = [4, 2];
      const piece = boxes(across, pitch, passHeight);
      expect(weavePiece(piece).trouble).toBeNull();
      for (const area of planPiece(piece).areas) {
        const allowed = Math.max(0.01 * area.drawnMm2, area.boundaryRows * pitch * passHeight);
        expect(Math.abs(area.wovenMm2 - area.drawnMm2)).toBeLessThanOrEqual(allowed + 1e-6);
      }
    }
  });

  it('are kept wherever whole passes and ends can keep them', () => {
    for (const make of [generatedPiece, (seed: number) => briefPiece(seed).piece]) {
      const lost = Array.from({ length: 400 }, (_, seed) => lostByStepping(make(seed)).map((id) => `${seed}, ${id}`));
      expect(lost.flat()).toEqual([]);
    }
  });

  it('are kept where ends are shared too, on the other side of the border if need be', () => {
    // Each of these lost too much when the end nearest to the drawn line was always the one shared.
    const pieces = [
      ...[96, 422, 564].map((seed) => ({ seed, piece: generatedPiece(seed) })),
      ...[28, 408].map((seed) => ({ seed, piece: briefPiece(seed).piece })),
    ];
    for (const { seed, piece } of pieces) {
      const random = new SeededRandom(seed);
      const shapes = piece.shapes.map((shape) => ({
        ...shape,
        boundary: random.pick(['shared-end', 'dovetailed'] as const),
      }));
      expect(weavePiece({ ...piece, shapes }).trouble).toBeNull();
      expect(lostByStepping({ ...piece, shapes })).toEqual([]);
    }
  });

  it('tell of what is drawn, not of the passes it falls on', () => {
    const random = new SeededRandom(5);
    for (let trial = 0; trial < 20; trial++) {
      const [low, high] = [random.between(3, 9), random.between(12, 20)];
      const shapes = [
        {
          kind: 'poly',
          pts: [
            [-10, low],
            [10, low],
            [10, high],
            [-10, high],
          ],
          yarn: 1,
        },
        { kind: 'band', y: [low - 1, high + 1], yarn: 2 },
      ] as const;
      const [inner, outer] = planPiece(flatPiece({ ends: 20, passes: 30, pitch: 3, passHeight: 1, shapes })).areas;
      expect(inner?.drawnMm2).toBeCloseTo(20 * (high - low), 6);
      expect(outer?.drawnMm2).toBeCloseTo(60 * (high - low + 2) - 20 * (high - low), 6);
    }
  });
});
