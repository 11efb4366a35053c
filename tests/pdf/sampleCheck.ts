import { readFileSync } from 'node:fs';
import type { CheckRecord } from '../../src/core/model/check.ts';
import { measurement } from '../../src/core/model/measurement.ts';

interface Truth {
  readonly selvedge: readonly { readonly y_mm: number; readonly left_mm: number; readonly right_mm: number }[];
  readonly ends: readonly {
    readonly index: number;
    readonly notch_x_mm: number;
    readonly fell_mm: number;
    readonly x_at_fell_mm: number;
  }[];
}

/** Solves a square set of equations by elimination. */
function solve(rows: number[][]): number[] {
  const size = rows.length;
  for (let at = 0; at < size; at++) {
    const best = rows
      .slice(at)
      .reduce((most, row, index) => (Math.abs(row[at]!) > Math.abs(rows[most]![at]!) ? at + index : most), at);
    [rows[at], rows[best]] = [rows[best]!, rows[at]!];
    for (let row = 0; row < size; row++) {
      if (row === at) continue;
      const share = rows[row]![at]! / rows[at]![at]!;
      for (let column = at; column <= size; column++) rows[row]![column]! -= share * rows[at]![column]!;
    }
  }
  return rows.map((row, at) => row[size]! / row[at]!);
}

/** Loom mm to px from four places read by eye off the rendered picture: enough to lay lines over it. */
function byEye(pairs: readonly (readonly [number, number, number, number])[]): number[] {
  const rows = pairs.flatMap(([x, y, u, v]) => [
    [x, y, 1, 0, 0, 0, -u * x, -u * y, u],
    [0, 0, 0, x, y, 1, -v * x, -v * y, v],
  ]);
  return [...solve(rows), 1];
}

/** A check as one might be kept, its figures those of the rendered scene with a give or take set by hand. */
export function sampleCheck(): CheckRecord {
  const text = readFileSync(new URL('../fixtures/sequence/seq4.truth.json', import.meta.url), 'utf8');
  const truth = JSON.parse(text) as Truth;
  const scale = 2250 / 952;
  const homography = byEye([
    [-101.6, 0, 257 * scale, 1022 * scale],
    [101.6, 0, 665 * scale, 1031 * scale],
    [101.6, 400, 696 * scale, 238 * scale],
    [-101.6, 400, 277 * scale, 219 * scale],
  ]);
  const every = truth.selvedge.filter((_, index) => index % 5 === 0);
  return {
    id: 'sample',
    kept: '2026-10-26T17:30:00.000Z',
    taken: null,
    photo: { hash: '0'.repeat(64), name: 'seq4.jpg', rendered: true, camera: null },
    marks: null,
    reading: {
      status: 'measured',
      reasons: [],
      reference: {
        method: 'fused',
        parts: [],
        mmPerPx: 0.2,
        residualMm: 0.1,
        lensK1: 0,
        lensK2: 0,
        lens: null,
        homography,
        photoWidth: 2250,
        photoHeight: 3000,
        scaleSigma: 0.001,
        baseSigmaMm: 0.2,
      },
      endsCounted: 33,
      ends: truth.ends.map((end) => ({
        index: end.index,
        seen: end.index !== 9,
        why: end.index === 9 ? 'a tail lies over it' : null,
        notchX: measurement(end.notch_x_mm, 0.1, 40, 'string'),
        fell: end.index === 9 ? null : measurement(end.fell_mm, 0.4, 12, 'fell change point'),
        xAtFell: measurement(end.x_at_fell_mm, 0.2, 12, 'string'),
        bow: null,
        runsTo: end.index,
      })),
      selvedge: every.map((row, index) => ({
        y: row.y_mm,
        left: index === 6 ? null : measurement(row.left_mm, 0.4, 20, 'selvedge profile'),
        right: measurement(row.right_mm, 0.4, 20, 'selvedge profile'),
      })),
      ribs: [],
      pass: measurement(1.062, 0.006, 150, 'rib period'),
      beat: [],
      colours: null,
      flags: [
        {
          kind: 'draw-in',
          side: 'right',
          yMm: 129,
          xMm: null,
          ends: [],
          deviationMm: -3.1,
          sigmaMm: 0.4,
          message: { mm: 'Right edge drawing in since 60 mm up.', in: 'Right edge drawing in since 2 ⅜ in up.' },
          advice: 'Leave the weft slacker at the right for the next 6 turns.',
        },
        {
          kind: 'tilt',
          side: 'right',
          yMm: null,
          xMm: null,
          ends: [],
          deviationMm: -2.2,
          sigmaMm: 0.5,
          message: { mm: 'The fell falls 2.2 mm to the right.', in: 'The fell falls 3\u204432 inch to the right.' },
          advice: 'Beat the right half on its own for two turns.',
        },
      ],
      timingMs: {},
    },
    dismissed: [{ flag: 1, reason: 'the picture was taken half way through a turn' }],
    note: 'Evening light, loom on the table.',
  };
}
