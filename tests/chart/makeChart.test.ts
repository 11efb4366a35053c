import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { covers, outlinesOf } from '../../src/core/cartoon/outline.ts';
import { clothGridOf } from '../../src/core/chart/clothGrid.ts';
import { makeChart } from '../../src/core/chart/makeChart.ts';
import { turned } from '../../src/core/chart/orientation.ts';
import { clothBox, sampleColumns, sampleRows } from '../../src/core/chart/sampleAreas.ts';
import { HEADER_AREA } from '../../src/core/model/plan.ts';
import { planPiece } from '../../src/core/plan/planPiece.ts';
import { arbitraryFlatPiece, type FlatPiece, flatPiece, mirrored, upsideDown } from './simplePiece.ts';

const small = arbitraryFlatPiece({ ends: 40, passes: 160 });

/**
 * Two pieces whose drawings are each other's image have charts that are. A drawing that is its own mirror image has one
 * chart, whose two edges stand a pass apart as they must; so any turn that carries the drawing over may carry the chart.
 */
function sameWork(flat: FlatPiece, image: FlatPiece): void {
  const one = makeChart(flatPiece(flat));
  const other = makeChart(flatPiece(image));
  const same = (left: Uint8Array | Uint16Array, right: Uint8Array | Uint16Array) =>
    left.every((value, at) => value === right[at]);
  const carries = [false, true].some((flipX) =>
    [false, true].some(
      (flipY) =>
        same(turned(other.drawnLabels, flat.ends, { flipX, flipY }), one.drawnLabels) &&
        same(turned(other.chart.cells, flat.ends, { flipX, flipY }), one.chart.cells),
    ),
  );
  expect(carries).toBe(true);
}

describe('sampling', () => {
  it('gives every cell the first shape that contains its middle', () => {
    fc.assert(
      fc.property(arbitraryFlatPiece({ ends: 20, passes: 60 }), (flat) => {
        const piece = flatPiece({ ...flat, header: 3 });
        const grid = clothGridOf(piece);
        const { drawnAreas } = makeChart(piece);
        const outlines = piece.shapes.map((shape) => outlinesOf(shape, clothBox(grid)));
        const columns = sampleColumns(grid);
        const rows = sampleRows(grid);
        for (let cell = 0; cell < drawnAreas.length; cell++) {
          const pass = Math.floor(cell / grid.ends);
          const first = outlines.findIndex((copies) =>
            copies.some((outline) => covers(outline, columns[cell % grid.ends]!, rows[pass]!)),
          );
          expect(drawnAreas[cell]).toBe(pass < 3 ? HEADER_AREA : first + 1);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('stepping', () => {
  it('moves no edge further than half an end and what its line runs in one turn, on straight lines', () => {
    // Diagonals from 5° to 85° through the middle of the cloth, both ways.
    for (const lean of [1, -1]) {
      for (let degrees = 5; degrees <= 85; degrees += 2.5) {
        const height = 240;
        const run = height / Math.tan((degrees * Math.PI) / 180);
        const flat = {
          ends: 61,
          pitch: 4,
          passes: 240,
          passHeight: 1,
          shapes: [
            {
              kind: 'poly' as const,
              pts: [
                [(-lean * run) / 2, 0],
                [500, 0],
                [500, height],
                [(lean * run) / 2, height],
              ] as [number, number][],
              yarn: 2,
            },
          ],
        };
        const plan = planPiece(flatPiece(flat));
        expect(plan.edges.map((edge) => edge.excessMm)).toEqual(plan.edges.map(() => 0));
        const [area] = plan.areas;
        const allowed = Math.max(0.01 * area!.drawnMm2, area!.boundaryRows * 4);
        expect(Math.abs(area!.wovenMm2 - area!.drawnMm2)).toBeLessThanOrEqual(allowed);
      }
    }
  });

  it('finds every edge where it was drawn when a level edge runs through the very middle of a pass', () => {
    // The pass from 12 to 13 is all that shows of the ground beside the post.
    const post = [
      [-15, 0],
      [15, 0],
      [15, 20],
      [-15, 20],
    ] as const;
    const piece = flatPiece({
      ends: 30,
      pitch: 3,
      passes: 20,
      passHeight: 1,
      shapes: [
        { kind: 'poly', pts: post, yarn: 2 },
        { kind: 'band', y: [0, 12], yarn: 1 },
        { kind: 'band', y: [12.5, 20], yarn: 1 },
      ],
    });
    const { edges } = planPiece(piece);
    expect(edges.length).toBeGreaterThan(0);
    for (const { largestMm, excessMm } of edges) expect([largestMm, excessMm]).toEqual([0, 0]);
  });

  it('keeps the area of slanting stripes and triangles to 1 % or a cell for each row with an edge', () => {
    const height = 160;
    for (let degrees = 5; degrees <= 85; degrees += 5) {
      for (const [pitch, passHeight] of [
        [6, 1],
        [4, 2],
      ] as const) {
        const run = height / Math.tan((degrees * Math.PI) / 180);
        const stripe = [
          [-run / 2 - 40, 0],
          [-run / 2 + 40, 0],
          [run / 2 + 40, height],
          [run / 2 - 40, height],
        ] as [number, number][];
        const wedge = [
          [-150, 0],
          [150, 0],
          [150, Math.min(height, 300 * Math.tan((degrees * Math.PI) / 180))],
        ] as [number, number][];
        for (const pts of [stripe, wedge]) {
          const piece = flatPiece({
            ends: Math.round(360 / pitch),
            pitch,
            passes: height / passHeight,
            passHeight,
            shapes: [{ kind: 'poly', pts, yarn: 2 }],
          });
          const [area] = planPiece(piece).areas;
          const allowed = Math.max(0.01 * area!.drawnMm2, area!.boundaryRows * pitch * passHeight);
          expect(Math.abs(area!.wovenMm2 - area!.drawnMm2)).toBeLessThanOrEqual(allowed);
        }
      }
    }
  });

  it('gives a piece and its mirror image mirror images of one chart', () => {
    fc.assert(
      fc.property(small, (flat) => {
        sameWork(flat, mirrored(flat));
      }),
      { numRuns: 150 },
    );
  });

  const uprightBox = (left: number, right: number, low: number, high: number, yarn = 2) => ({
    kind: 'poly' as const,
    pts: [
      [left, low],
      [right, low],
      [right, high],
      [left, high],
    ] as [number, number][],
    yarn,
  });

  it('weaves a bar one pitch wide one end wide, wherever it stands but round the middle of an even warp', () => {
    for (const ends of [20, 21]) {
      for (let left = -8; left <= 7; left += 0.25) {
        // Its image in the middle of an even warp is itself: one end can't be chosen there.
        if (ends === 20 && left === -0.5) continue;
        for (const passes of [39, 40]) {
          const shapes = [uprightBox(left * 4, (left + 1) * 4, 6, 33.5)];
          const flat = { ends, pitch: 4, passes, passHeight: 1, shapes };
          const { chart } = makeChart(flatPiece(flat));
          for (let pass = 8; pass < 32; pass++) {
            const row = chart.areas.subarray(pass * ends, (pass + 1) * ends);
            expect([left, row.filter((area) => area === 1).length]).toEqual([left, 1]);
          }
          sameWork(flat, mirrored(flat));
        }
      }
    }
  });

  it('leaves no stripe where two shapes meet in the middle of the middle end', () => {
    const flat = {
      ends: 21,
      pitch: 4,
      passes: 40,
      passHeight: 1,
      shapes: [uprightBox(-20, 0, 6, 33.5, 2), uprightBox(0, 20, 6, 33.5, 3), uprightBox(-30, 30, 2, 38, 1)],
    };
    const row = [...makeChart(flatPiece(flat)).chart.areas.subarray(20 * 21, 21 * 21)];
    // The upper of the two has it, as in a drawing seen in a mirror.
    expect(row[10]).toBe(1);
    sameWork(flat, mirrored(flat));
  });

  it('gives mirror images of one chart when edges run through the middles of ends', () => {
    const side = fc.integer({ min: -20, max: 20 }).map((half) => half * 2);
    const box = fc
      .record({ one: side, other: side, low: fc.integer({ min: 0, max: 30 }), tall: fc.integer({ min: 1, max: 20 }) })
      .filter(({ one, other }) => one !== other)
      .chain(({ one, other, low, tall }) =>
        fc
          .integer({ min: 0, max: 3 })
          .map((yarn) => uprightBox(Math.min(one, other), Math.max(one, other), low + 0.25, low + tall + 0.25, yarn)),
      );
    fc.assert(
      fc.property(fc.constantFrom(20, 21), fc.array(box, { minLength: 1, maxLength: 4 }), (ends, shapes) => {
        const flat = { ends, pitch: 4, passes: 51, passHeight: 1, shapes };
        sameWork(flat, mirrored(flat));
      }),
      { numRuns: 200 },
    );
  });

  it('counts an end the same way on both sides when edges run through the middles of ends', () => {
    for (const ends of [20, 21]) {
      for (let half = 1.5; half < 9; half += 0.5) {
        const x = half * 4;
        const flat = {
          ends,
          pitch: 4,
          passes: 40,
          passHeight: 1,
          shapes: [
            {
              kind: 'poly' as const,
              pts: [
                [-x, 10.5],
                [x, 10.5],
                [x, 29.5],
                [-x, 29.5],
              ] as [number, number][],
              yarn: 2,
            },
          ],
        };
        const { cells } = makeChart(flatPiece(flat)).chart;
        expect(turned(cells, ends, { flipX: true, flipY: false })).toEqual(cells);
        expect(turned(cells, ends, { flipX: false, flipY: true })).toEqual(cells);
      }
    }
  });

  it('gives a piece turned upside down the same chart turned upside down', () => {
    fc.assert(
      fc.property(small, (flat) => {
        sameWork(flat, upsideDown(flat));
      }),
      { numRuns: 150 },
    );
  });

  it('keeps the chart when yarn and sett are scaled together', () => {
    fc.assert(
      fc.property(small, fc.constantFrom(0.5, 2, 4), (flat, scale) => {
        const by = ([x, y]: readonly [number, number]) => [x * scale, y * scale] as const;
        const scaled = {
          ...flat,
          pitch: flat.pitch * scale,
          passHeight: flat.passHeight * scale,
          shapes: flat.shapes.map((shape) =>
            shape.kind === 'poly'
              ? { ...shape, pts: shape.pts.map(by) }
              : shape.kind === 'circle'
                ? { ...shape, c: by(shape.c), r: shape.r * scale }
                : { ...shape, y: by(shape.y) },
          ),
        };
        expect(makeChart(flatPiece(scaled)).chart.cells).toEqual(makeChart(flatPiece(flat)).chart.cells);
      }),
      { numRuns: 60 },
    );
  });

  it('keeps materials when a piece without header is turned upside down', () => {
    fc.assert(
      fc.property(small, (flat) => {
        const one = planPiece(flatPiece(flat)).materials.yarns;
        const other = planPiece(flatPiece(upsideDown(flat))).materials.yarns;
        one.forEach((need, index) => {
          expect(Math.abs(need.metres - other[index]!.metres)).toBeLessThanOrEqual(0.001 * need.metres);
        });
      }),
      { numRuns: 60 },
    );
  });
});
