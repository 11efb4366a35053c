import { z } from 'zod';
import { chartFits } from '../chart/gridLimit.ts';
import type { Loom, Piece } from '../model/piece.ts';
import type { DocumentKind } from './document.ts';

const finite = z.number().min(-1e6).max(1e6);
const length = finite.positive().max(20_000);
const id = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/);
const words = z.string().max(200);
const colour = z.string().regex(/^#[0-9a-f]{6}$/);
const point = z.strictObject({ x: finite, y: finite });

const yarn = z.strictObject({
  id,
  name: words,
  colour,
  fibre: z.enum(['wool', 'cotton', 'linen', 'silk', 'other']),
  count: z
    .strictObject({
      system: z.enum([
        'tex',
        'metric-nm',
        'cotton-ne',
        'worsted-nw',
        'linen-lea',
        'woollen-run',
        'yards-per-pound',
        'metres-per-100-g',
      ]),
      size: finite.positive(),
      plies: z.number().int().min(1).max(100),
    })
    .nullable(),
  label: z.strictObject({ metres: finite.positive(), grams: finite.positive() }).nullable(),
  wrapsPerCm: finite.positive().max(200).nullable(),
  diameter: finite.positive().max(50).nullable(),
  category: z.number().int().min(0).max(7).nullable(),
  strands: z.number().int().min(1).max(20),
  ballGrams: finite.positive().nullable(),
  measuredUse: z.number().min(1).max(5).nullable().optional(),
});

/** One stroke of a path, cloth mm. */
export const pathCommand = z.discriminatedUnion('to', [
  z.strictObject({ to: z.literal('move'), x: finite, y: finite }),
  z.strictObject({ to: z.literal('line'), x: finite, y: finite }),
  z.strictObject({ to: z.literal('cubic'), x1: finite, y1: finite, x2: finite, y2: finite, x: finite, y: finite }),
  z.strictObject({ to: z.literal('close') }),
]);

const form = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('polygon'), points: z.array(point).min(3).max(10_000) }),
  z.strictObject({ kind: z.literal('ellipse'), centre: point, radiusX: length, radiusY: length }),
  z.strictObject({ kind: z.literal('band'), from: finite, to: finite }),
  z.strictObject({
    kind: z.literal('arch'),
    base: point,
    width: length,
    springing: finite.nonnegative(),
    rise: length,
  }),
  z.strictObject({
    kind: z.literal('path'),
    commands: z.array(pathCommand).min(1).max(200_000),
    fillRule: z.enum(['nonzero', 'evenodd']),
    origin: z.enum(['freehand', 'lettering', 'drawing', 'traced']),
  }),
]);

const shape = z.strictObject({
  id,
  name: words,
  yarn: id,
  form,
  rotation: finite,
  mirrorAbout: finite.nullable(),
  repeat: z.strictObject({ copies: z.number().int().min(1).max(500), dx: finite, dy: finite }).nullable(),
  boundary: z.enum(['slit', 'shared-end', 'interlocked', 'dovetailed']),
  singlePass: z.boolean(),
  hidden: z.boolean(),
  locked: z.boolean(),
});

const ornament = z.discriminatedUnion('kind', [
  z.strictObject({
    id,
    kind: z.literal('wrapped-flower'),
    name: words,
    at: point,
    yarn: id,
    pegs: z.number().int().min(3).max(200),
    formerDiameter: length,
    wrapsPerPetal: z.number().int().min(1).max(50),
    layers: z.number().int().min(1).max(20),
    count: z.number().int().min(1).max(1_000),
  }),
  z.strictObject({
    id,
    kind: z.literal('felted-leaf'),
    name: words,
    at: point,
    colour,
    length,
    width: length,
    thickness: length,
    rotation: finite,
    count: z.number().int().min(1).max(1_000),
  }),
]);

const loom = z.strictObject({
  name: words,
  notchPitch: length.max(100),
  notches: z.number().int().min(2).max(2_000),
  openingWidth: length,
  openingHeight: length,
  bar: length,
  depth: length,
});

/** A loom kept for other pieces. */
export const loomSchema = loom as unknown as z.ZodType<Loom, Loom>;

const pieceFields = z.strictObject({
  name: z.string().min(1).max(200),
  created: z.string().max(40),
  changed: z.string().max(40),
  units: z.enum(['mm', 'in']),
  loom,
  warp: z.strictObject({
    ends: z.number().int().min(2).max(2_000),
    stringsPerEnd: z.union([z.literal(1), z.literal(2)]),
    stringDiameter: length.max(20),
    firstNotch: z.number().int().min(0).max(2_000),
    yarnName: words,
    tex: finite.positive().nullable(),
    colour,
  }),
  cloth: z.strictObject({
    baseAboveBottomBar: finite.nonnegative(),
    height: length,
    passHeight: length.max(50),
    passHeightSource: z.enum(['planned', 'measured']),
    headerPasses: z.number().int().min(0).max(1_000),
    footerPasses: z.number().int().min(0).max(1_000),
    headerYarn: id,
    ground: id,
    replans: z
      .array(
        z.strictObject({
          at: z.string().max(40),
          passesDone: z.number().int().min(1).max(10_000_000),
          measured: z.strictObject({ passes: z.number().int().min(1).max(100_000), height: length }),
          passHeightBefore: length.max(50),
        }),
      )
      .max(200)
      .optional(),
  }),
  yarns: z.array(yarn).min(1).max(200),
  shapes: z.array(shape).max(2_000),
  ornaments: z.array(ornament).max(500),
  making: z.strictObject({
    workingLength: finite.positive(),
    tail: finite.nonnegative(),
    fringe: finite.nonnegative(),
    spare: z.number().min(0).max(2),
    passesPerMinute: finite.positive(),
    hillLimit: finite.positive(),
    slitLimit: finite.nonnegative(),
    allowance: finite.nonnegative(),
    dowelSag: finite.positive(),
  }),
  notes: z
    .array(
      z.strictObject({
        id,
        at: z.string().max(40),
        kind: z.enum(['planned', 'warped', 'woven', 'finished', 'note']),
        text: z.string().max(10_000),
      }),
    )
    .max(10_000),
});

/** What one field can't say of another: every yarn that is named is listed, and the cloth can be charted. */
const wholePiece = pieceFields.superRefine((piece, context) => {
  const listed = new Set(piece.yarns.map((one) => one.id));
  const named: [string, (string | number)[]][] = [
    [piece.cloth.ground, ['cloth', 'ground']],
    [piece.cloth.headerYarn, ['cloth', 'headerYarn']],
    ...piece.shapes.map(({ yarn: of }, index): [string, (string | number)[]] => [of, ['shapes', index, 'yarn']]),
  ];
  for (const [yarnId, path] of named) {
    if (!listed.has(yarnId))
      context.addIssue({ code: 'custom', path, message: `names yarn ${yarnId}, which is not listed` });
  }
  if (!chartFits(piece.warp.ends, piece.cloth.height, piece.cloth.passHeight)) {
    context.addIssue({
      code: 'custom',
      path: ['cloth', 'passHeight'],
      message: 'gives more passes than can be charted',
    });
  }
});

/** The body of `piece.json`, version 1. Unknown keys, NaN and infinities are refused. */
export const pieceSchema = wholePiece as unknown as z.ZodType<Piece, Piece>;

/** `piece.json`: everything the weaver decided. A new version adds its migration here and its fixture to the tests. */
export const pieceDocument: DocumentKind<Piece> = {
  format: 'plumbweft-piece',
  version: 1,
  migrations: [],
  body: pieceSchema,
  called: 'piece',
};
