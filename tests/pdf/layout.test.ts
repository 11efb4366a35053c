import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mm } from '../../src/core/model/units.ts';
import { areaLabels } from '../../src/core/report/areaLabels.ts';
import { chartOutlines } from '../../src/core/report/chartOutlines.ts';
import { chartPatches } from '../../src/core/report/chartPatches.ts';
import { edgeDeviations } from '../../src/core/report/edgeDeviations.ts';
import { stackFromFoot } from '../../src/core/report/stackFromFoot.ts';
import { OVERLAP, tilePages } from '../../src/core/report/tilePages.ts';
import { yarnLetter } from '../../src/core/report/yarnLetter.ts';
import { plannedSelvedges } from '../../src/core/warp/plannedSelvedges.ts';
import { sampleCheck } from './sampleCheck.ts';
import { harbourLantern } from './samplePiece.ts';

describe('pages of a true-scale drawing', () => {
  const paper = fc.constantFrom('a4' as const, 'letter' as const);
  it('show every place of the drawing, and neighbours share a strip to glue', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 2000, noNaN: true }),
        fc.double({ min: 5, max: 2000, noNaN: true }),
        paper,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (width, height, name, sx, sy) => {
          const tiling = tilePages(width, height, name);
          const { frame, tiles, rows, columns } = tiling;
          expect(tiles).toHaveLength(rows * columns);
          const [x, y] = [sx * width, sy * height];
          const showing = tiles.filter(
            (tile) =>
              x >= tile.left - 1e-9 &&
              x <= tile.left + frame.width + 1e-9 &&
              y >= tile.bottom - 1e-9 &&
              y <= tile.bottom + frame.height + 1e-9,
          );
          expect(showing.length).toBeGreaterThan(0);
          const first = tiles[0]!;
          for (const tile of tiles) {
            if (tile.row === 1 && tile.column === 2)
              expect(first.left + frame.width - tile.left).toBeCloseTo(OVERLAP, 9);
            if (tile.row === 2 && tile.column === 1)
              expect(first.bottom + frame.height - tile.bottom).toBeCloseTo(OVERLAP, 9);
          }
          expect(frame.left + frame.width).toBeLessThanOrEqual(tiling.paper.width);
          expect(frame.bottom + frame.height).toBeLessThanOrEqual(tiling.paper.height);
        },
      ),
    );
  });
  it('takes the way that needs fewer sheets', () => {
    expect(tilePages(180, 240, 'a4')).toMatchObject({ rows: 1, columns: 1, paper: { width: 210 } });
    expect(tilePages(260, 160, 'a4')).toMatchObject({ rows: 1, columns: 1, paper: { width: 297 } });
    expect(tilePages(240, 278, 'a4')).toMatchObject({ rows: 2, columns: 1, paper: { width: 297 } });
  });
  it('counts rows from the foot, as the cloth grows', () => {
    const { tiles } = tilePages(500, 800, 'a4');
    for (const tile of tiles) {
      for (const other of tiles) if (other.row > tile.row) expect(other.bottom).toBeGreaterThan(tile.bottom);
    }
  });
});

const anyChart = fc
  .tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 12 }))
  .chain(([ends, passes]) =>
    fc
      .array(fc.integer({ min: 0, max: 2 }), { minLength: ends * passes, maxLength: ends * passes })
      .map((cells) => ({ ends, passes, pitch: mm(6.35), passHeight: mm(1.06), cells })),
  );

describe('drawing a chart', () => {
  it('outlines exactly the places where cells differ', () => {
    fc.assert(
      fc.property(anyChart, (chart) => {
        let differ = 0;
        for (let pass = 0; pass < chart.passes; pass++) {
          for (let end = 0; end < chart.ends; end++) {
            const cell = pass * chart.ends + end;
            if (end > 0 && chart.cells[cell] !== chart.cells[cell - 1]) differ++;
            if (pass > 0 && chart.cells[cell] !== chart.cells[cell - chart.ends]) differ++;
          }
        }
        const length = chartOutlines(chart, (cell) => chart.cells[cell]!).reduce(
          (sum, edge) => sum + edge.toEnd - edge.fromEnd + edge.toPass - edge.fromPass,
          0,
        );
        expect(length).toBe(differ);
      }),
    );
  });
  it('covers every cell with one patch of its own value', () => {
    fc.assert(
      fc.property(anyChart, (chart) => {
        const drawn = new Array<number>(chart.cells.length).fill(-1);
        for (const patch of chartPatches(chart, (cell) => chart.cells[cell]!)) {
          for (let pass = patch.fromPass; pass < patch.toPass; pass++) {
            for (let end = patch.fromEnd; end < patch.toEnd; end++) {
              expect(drawn[pass * chart.ends + end]).toBe(-1);
              drawn[pass * chart.ends + end] = patch.value;
            }
          }
        }
        expect(drawn).toEqual(chart.cells);
      }),
    );
  });
  it('labels every connected area once, inside itself', () => {
    fc.assert(
      fc.property(anyChart, (chart) => {
        const labels = areaLabels(chart, (cell) => chart.cells[cell]!);
        for (const label of labels) expect(chart.cells[label.pass * chart.ends + label.end]).toBe(label.value);
        for (const value of new Set(chart.cells)) expect(labels.some((label) => label.value === value)).toBe(true);
        expect(new Set(labels.map((label) => `${label.end} ${label.pass}`)).size).toBe(labels.length);
      }),
    );
  });
  it('puts the letter of a plain cloth in its middle', () => {
    const chart = { ends: 9, passes: 51, pitch: mm(6), passHeight: mm(1) };
    expect(areaLabels(chart, () => 0)).toMatchObject([{ end: 4, pass: 25 }]);
  });
});

describe('small things', () => {
  it('letters yarns past Z', () => {
    expect([0, 1, 25, 26, 53].map(yarnLetter)).toEqual(['A', 'B', 'Z', 'A2', 'B3']);
  });
  it('stacks from the foot and never past the top', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 1, max: 90, noNaN: true }), { maxLength: 30 }), (heights) => {
        const places = stackFromFoot(heights, 100, 2);
        for (const [at, place] of places.entries()) {
          expect(place.bottom + heights[at]!).toBeLessThanOrEqual(100 + 1e-6);
          const before = places[at - 1];
          if (before !== undefined && before.page === place.page)
            expect(place.bottom).toBeCloseTo(before.bottom + heights[at - 1]! + 2, 9);
        }
      }),
    );
  });
  it('counts out as positive on both edges and keeps gaps', () => {
    const rows = sampleCheck().reading.selvedge;
    const planned = { left: -105, right: 105 };
    const right = edgeDeviations(rows, planned, 'right').at(-1)!.deviation!;
    expect(right.value).toBeLessThan(-3);
    const left = edgeDeviations(rows, planned, 'left');
    expect(left[0]!.deviation!.value).toBeGreaterThan(0);
    expect(left.filter((row) => row.deviation === null)).toHaveLength(1);
  });
  it("takes the overhang from the cloth's own foot once it can be seen", () => {
    const piece = harbourLantern();
    const outer = 16 * 6.35;
    const without = plannedSelvedges(piece);
    expect(without.right - outer).toBeCloseTo(piece.warp.stringDiameter + 2 * piece.cloth.passHeight);
    const seen = plannedSelvedges(piece, sampleCheck().reading.selvedge);
    expect(seen.right - outer).toBeGreaterThan(3.4);
    expect(seen.right - outer).toBeLessThan(4.4);
    expect(seen.left).toBe(-seen.right);
  });
});
