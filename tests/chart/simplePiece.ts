import fc from 'fast-check';
import type { Piece } from '../../src/core/model/piece.ts';
import { parseBrief, pieceFromBrief } from '../../src/core/project/brief.ts';

export type FlatShape =
  | { readonly kind: 'poly'; readonly pts: readonly (readonly [number, number])[]; readonly yarn: number }
  | { readonly kind: 'circle'; readonly c: readonly [number, number]; readonly r: number; readonly yarn: number }
  | { readonly kind: 'band'; readonly y: readonly [number, number]; readonly yarn: number };

export interface FlatPiece {
  readonly ends: number;
  readonly pitch: number;
  readonly passes: number;
  readonly passHeight: number;
  readonly header?: number;
  readonly strings?: 1 | 2;
  readonly shapes: readonly FlatShape[];
}

/** A piece of so many ends and passes, with shapes in cloth mm. */
export function flatPiece(flat: FlatPiece): Piece {
  const brief = parseBrief({
    name: 'Trial',
    loom: {
      kind: 'notched frame',
      notch_pitch_mm: flat.pitch,
      opening_width_mm: Math.min(5_000, flat.ends * flat.pitch + 20),
      opening_height_mm: Math.min(5_000, flat.passes * flat.passHeight + 200),
      bar_mm: 28,
      notches: flat.ends,
      depth_mm: 18,
    },
    warp: { ends: flat.ends, strings_per_end: flat.strings ?? 1, string_diameter_mm: 1, first_notch: 0 },
    cloth: {
      base_above_bottom_bar_mm: 40,
      width_mm: flat.ends * flat.pitch,
      height_mm: flat.passes * flat.passHeight,
      pass_mm: flat.passHeight,
      header_passes: flat.header ?? 0,
    },
    yarns: ['#222222', '#eeeeee', '#c9962f', '#2f7f86'],
    ground: 0,
    header_yarn: 1,
    shapes: flat.shapes,
  });
  if (!brief.ok) throw new Error(brief.problem.sentence);
  return pieceFromBrief(brief.value, '2026-11-25T09:00:00.000Z');
}

const turnX = (shape: FlatShape): FlatShape =>
  shape.kind === 'poly'
    ? { ...shape, pts: shape.pts.map(([x, y]) => [-x, y] as const) }
    : shape.kind === 'circle'
      ? { ...shape, c: [-shape.c[0], shape.c[1]] }
      : shape;

const turnY = (shape: FlatShape, height: number): FlatShape =>
  shape.kind === 'poly'
    ? { ...shape, pts: shape.pts.map(([x, y]) => [x, height - y] as const) }
    : shape.kind === 'circle'
      ? { ...shape, c: [shape.c[0], height - shape.c[1]] }
      : { ...shape, y: [height - shape.y[1], height - shape.y[0]] };

export const mirrored = (flat: FlatPiece): FlatPiece => ({ ...flat, shapes: flat.shapes.map(turnX) });

export const upsideDown = (flat: FlatPiece): FlatPiece => {
  const height = flat.passes * flat.passHeight;
  return { ...flat, shapes: flat.shapes.map((shape) => turnY(turnX(shape), height)) };
};

/**
 * Places on a fine grid, so that turning a piece keeps every figure exact, but never on the middle of an end or a pass:
 * a line through the very middle of the cloth belongs to neither side of it.
 */
const place = (low: number, high: number) =>
  fc.integer({ min: Math.floor(low * 16), max: Math.ceil(high * 16) }).map((value) => value / 16 + 1 / 64);

export const arbitraryFlatPiece = (size: { readonly ends: number; readonly passes: number }): fc.Arbitrary<FlatPiece> =>
  fc
    .record({
      ends: fc.integer({ min: 4, max: size.ends }),
      passes: fc.integer({ min: 8, max: size.passes }),
      pitch: fc.constantFrom(3.125, 4, 6.25),
      passHeight: fc.constantFrom(0.75, 1, 1.125),
      strings: fc.constantFrom<1 | 2>(1, 2),
    })
    .chain((base) => {
      const half = (base.ends * base.pitch) / 2;
      const height = base.passes * base.passHeight;
      const yarn = fc.integer({ min: 0, max: 3 });
      const point = fc.tuple(place(-half * 1.1, half * 1.1), place(0, height));
      const shape = fc.oneof(
        fc.record({
          kind: fc.constant('poly' as const),
          pts: fc.array(point, { minLength: 3, maxLength: 7 }),
          yarn,
        }),
        fc.record({
          kind: fc.constant('circle' as const),
          c: point,
          r: place(1, Math.max(2, Math.min(half, height / 2))),
          yarn,
        }),
        fc.tuple(place(0, height), place(0.5, Math.max(1, height / 3)), yarn).map(([low, tall, of]) => ({
          kind: 'band' as const,
          y: [low, Math.min(height, low + tall)] as const,
          yarn: of,
        })),
      );
      return fc
        .record({ shapes: fc.array(shape, { minLength: 1, maxLength: 5 }) })
        .map(({ shapes }) => ({ ...base, shapes }));
    });
