import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CellShift, cellShifts } from '../../src/core/photo/cellShift.ts';
import type { FlatGrid, FlatLoom } from '../../src/core/photo/flatLoom.ts';
import type { LoomCell } from '../../src/core/photo/loomCells.ts';

const grid: FlatGrid = { left: 0, top: 60, pxPerMm: 3, width: 180, height: 180 };
const cell: LoomCell = { zone: 'left rail', x: 30, y: 30, halfWidth: 6, halfHeight: 6 };
const flat = (light: (x: number, y: number) => number): FlatLoom => ({
  grid,
  light: {
    width: grid.width,
    height: grid.height,
    data: Float32Array.from({ length: grid.width * grid.height }, (_, k) =>
      light((k % grid.width) / grid.pxPerMm, grid.top - Math.floor(k / grid.width) / grid.pxPerMm),
    ),
  },
  seen: new Uint8Array(grid.width * grid.height).fill(1),
});
/** Waves that don't repeat together. */
const waves = (x: number, y: number) =>
  Math.sin(1.1 * x + 0.7 * y) +
  Math.sin(2.3 * x - 1.7 * y + 1) +
  Math.sin(0.53 * x * 1.9 + 3.1 * y) +
  Math.cos(0.037 * x * y);

describe('a cell looked for in another picture', () => {
  it('is found to a tenth of a pixel along every direction', () => {
    const aside = fc.double({ min: -1.2, max: 1.2, noNaN: true });
    fc.assert(
      fc.property(aside, aside, (dx, dy) => {
        const shifts = cellShifts(
          flat(waves),
          flat((x, y) => waves(x - dx, y - dy)),
          cell,
          2,
          6,
        );
        expect(shifts).toHaveLength(2);
        for (const { ux, uy, shift, sigma } of shifts) {
          expect(Math.abs(shift - (ux * dx + uy * dy))).toBeLessThan(Math.max(3 * sigma, 0.1 / grid.pxPerMm));
        }
      }),
      { numRuns: 20 },
    );
  });

  it('of straight grain is told across the grain only', () => {
    const grain = (x: number, y: number) =>
      Math.sin(1.3 * x) + Math.sin(2.9 * x + 0.4) + Math.sin(0.6 * x + 2) + 0.03 * waves(x, y);
    const shifts = cellShifts(
      flat(grain),
      flat((x, y) => grain(x - 0.5, y)),
      cell,
      2,
      6,
    );
    const [across, along] = shifts as [CellShift, CellShift];
    expect(Math.abs(across.ux)).toBeGreaterThan(0.95);
    expect(Math.abs(across.shift * across.ux - 0.5)).toBeLessThan(0.05);
    expect(across.distinct).toBeGreaterThan(3);
    expect(along.sigma).toBeGreaterThan(across.sigma);
  });

  it('that looks like its neighbours isn’t distinct', () => {
    const ribs = (x: number, y: number) => Math.sin((2 * Math.PI * x) / 4) + Math.sin((2 * Math.PI * y) / 2);
    for (const { distinct } of cellShifts(flat(ribs), flat(ribs), cell, 1.2, 6)) expect(distinct).toBeLessThan(3);
  });
});
