import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LoomReading } from '../../src/core/model/check.ts';
import { stripFactor } from '../../src/renderer/screens/check/edgeRows.ts';
import { differences, seenRuns } from '../../src/renderer/screens/check/overlayPaths.ts';
import {
  toClothX,
  toClothY,
  toScreenX,
  toScreenY,
  wholePiece,
  zoomedAt,
} from '../../src/renderer/screens/check/stageView.ts';

const size = fc.double({ min: 50, max: 2000, noNaN: true });

describe('the view of the cloth', () => {
  it('shows the whole planned piece', () => {
    fc.assert(
      fc.property(size, size, size, size, (width, height, half, tall) => {
        const view = wholePiece(width, height, half, tall);
        fc.pre(view.scale > 0.05);
        expect(toScreenX(view, -half)).toBeGreaterThan(0);
        expect(toScreenX(view, half)).toBeLessThan(width);
        expect(toScreenY(view, tall)).toBeGreaterThan(0);
        expect(toScreenY(view, 0)).toBeLessThan(height);
      }),
    );
  });

  it('keeps the place under the pointer when it zooms', () => {
    fc.assert(
      fc.property(size, size, fc.double({ min: 0.2, max: 5, noNaN: true }), (px, py, factor) => {
        const view = wholePiece(500, 600, 105, 260);
        const zoomed = zoomedAt(view, factor, px, py, { min: 0.01, max: 100 });
        expect(toClothX(zoomed, px)).toBeCloseTo(toClothX(view, px), 6);
        expect(toClothY(zoomed, py)).toBeCloseTo(toClothY(view, py), 6);
      }),
    );
  });
});

describe('what was not seen', () => {
  it('leaves a gap that is never bridged', () => {
    const rows = [1, 2, null, 4, null, null, 7];
    expect(seenRuns(rows, (row) => row)).toEqual([[1, 2], [4], [7]]);
  });
});

describe('the difference between plan and cloth', () => {
  const at = (value: number) => ({ value, sigma: 0.3, n: 1, source: 'test' });
  const reading = (rights: readonly (number | null)[]) =>
    ({
      selvedge: rights.map((right, index) => ({
        y: 2 * index,
        left: at(-105),
        right: right === null ? null : at(right),
      })),
    }) as unknown as LoomReading;
  const edges = { left: -105, right: 105 };
  const plain = (x: number, y: number) => ({ x, y });

  it('is short where the cloth lies in, past where it lies out', () => {
    const inside = differences(reading([104, 103, 102]), edges, plain);
    expect(inside.short).not.toBe('');
    const outside = differences(reading([106, 107, 108]), edges, plain);
    expect(outside.past).toContain('107.00');
    expect(outside.short).toBe('');
  });

  it('has nothing where an edge was not seen', () => {
    const { short, past } = differences(reading([null, null, null]), edges, plain);
    expect(short).toBe('');
    // The left edge lies on the plan all the way; of the right one there is no point at all.
    expect(past).not.toMatch(/[ML]105\.00/);
  });
});

describe('an edge strip', () => {
  const run = (...outs: number[]) => [outs.map((out, index) => ({ y: index, out, sigma: 0.3 }))];
  it('is four times wider, or less where the edge would leave it', () => {
    expect(stripFactor(run(-3), 2.09, 112)).toBe(4);
    expect(stripFactor(run(-14), 2.09, 112)).toBe(2);
    expect(stripFactor(run(-30), 2.09, 112)).toBe(1);
    expect(stripFactor(run(6), 2.09, 112)).toBe(2);
  });
});
