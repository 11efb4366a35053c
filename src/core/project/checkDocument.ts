import { z } from 'zod';
import type { CheckRecord, LoomReading } from '../model/check.ts';
import type { DocumentKind } from './document.ts';
import { marksSchema } from './marksSchema.ts';

const finite = z.number();
const reading = z.strictObject({
  value: finite,
  sigma: finite.positive(),
  n: z.number().int().nonnegative(),
  source: z.string().max(200),
});
const maybe = reading.nullable();
const side = z.enum(['left', 'right']).nullable();
/** What is said in millimetres and in inches. */
export const bothUnitsSchema = z.strictObject({ mm: z.string(), in: z.string() });

export const reasonCodes = [
  'unreadable-file',
  'too-large',
  'too-small',
  'too-dark',
  'too-bright',
  'blurred',
  'too-tilted',
  'no-loom',
  'no-strings',
  'bar-missing',
  'loom-cut-off',
  'wrong-count',
  'wrong-pitch',
  'points-do-not-fit',
  'references-disagree',
  'maybe-mirrored',
  'nothing-woven',
  'took-too-long',
  'internal',
] as const;

/** What one photograph showed of its camera's lens. */
export const fittedLensSchema = z.strictObject({
  k1: finite,
  k1Sigma: finite.nonnegative(),
  focal: finite.positive(),
  focalShare: finite.nonnegative(),
});

const loomReadingFields = z.strictObject({
  status: z.enum(['measured', 'needs-reference', 'refused']),
  reasons: z
    .array(
      z.strictObject({
        code: z.enum(reasonCodes),
        message: bothUnitsSchema,
        remedy: z.string(),
        figure: z.enum(['openingWidth', 'openingHeight']).optional(),
      }),
    )
    .max(100),
  reference: z
    .strictObject({
      method: z.enum(['opening-and-notches', 'notches', 'card', 'points', 'earlier-check', 'fused']),
      parts: z.array(z.string()).max(20),
      mmPerPx: finite,
      residualMm: finite,
      lensK1: finite,
      lensK2: finite,
      lens: fittedLensSchema.nullable(),
      homography: z.array(finite).length(9),
      photoWidth: z.number().int(),
      photoHeight: z.number().int(),
      scaleSigma: finite,
      baseSigmaMm: finite,
    })
    .nullable(),
  endsCounted: z.number().int().nonnegative().nullable(),
  ends: z
    .array(
      z.strictObject({
        index: z.number().int().nonnegative(),
        seen: z.boolean(),
        why: z.string().nullable(),
        notchX: maybe,
        fell: maybe,
        xAtFell: maybe,
        bow: maybe,
        runsTo: z.number().int().nonnegative().nullable(),
      }),
    )
    .max(5_000),
  selvedge: z.array(z.strictObject({ y: finite, left: maybe, right: maybe })).max(10_000),
  ribs: z.array(z.strictObject({ y: finite, x: z.array(maybe).max(5_000) })).max(5_000),
  pass: maybe,
  beat: z.array(z.strictObject({ y: finite, pass: reading })).max(5_000),
  colours: z.strictObject({ rows: z.array(z.array(z.number().int())).max(10_000), share: finite }).nullable(),
  flags: z
    .array(
      z.strictObject({
        kind: z.enum(['draw-in', 'spreading', 'tilt', 'uneven', 'beat', 'motif', 'count', 'slack']),
        side,
        yMm: finite.nullable(),
        xMm: finite.nullable(),
        ends: z.array(z.number().int().nonnegative()).max(5_000),
        deviationMm: finite,
        sigmaMm: finite,
        message: bothUnitsSchema,
        advice: z.string(),
      }),
    )
    .max(1_000),
  timingMs: z.record(z.string(), finite),
});

const checkRecordFields = z.strictObject({
  id: z.string().regex(/^[a-z0-9-]{1,64}$/),
  kept: z.string().max(40),
  taken: z.string().max(40).nullable(),
  photo: z.strictObject({
    hash: z.string().regex(/^[0-9a-f]{64}$/),
    name: z.string().max(300),
    rendered: z.boolean(),
    camera: z.string().max(300).nullable(),
  }),
  marks: marksSchema.nullable(),
  reading: loomReadingFields,
  dismissed: z.array(z.strictObject({ flag: z.number().int(), reason: z.string().max(1_000) })).max(1_000),
  note: z.string().max(10_000),
});

/** Everything one photograph said, as it is kept. */
export const loomReadingSchema = loomReadingFields as unknown as z.ZodType<LoomReading, LoomReading>;

/** One kept check, version 6. */
export const checkRecordSchema = checkRecordFields as unknown as z.ZodType<CheckRecord, CheckRecord>;

const keptBefore = z.looseObject({
  reading: z.looseObject({ ends: z.array(z.looseObject({})), flags: z.array(z.looseObject({})) }),
});
const keptInOneUnit = z.looseObject({
  reading: z.looseObject({ flags: z.array(z.looseObject({ message: z.string() })) }),
});
const keptReasonsInOneUnit = z.looseObject({
  reading: z.looseObject({ reasons: z.array(z.looseObject({ message: z.string() })) }),
});
const keptWithPoints = z.looseObject({
  points: z.array(z.unknown()).nullable(),
  reading: z.looseObject({ reference: z.looseObject({}).nullable() }),
});

/** `checks/<id>.json`: one kept check. */
export const checkDocument: DocumentKind<CheckRecord> = {
  format: 'plumbweft-check',
  version: 6,
  migrations: [
    {
      from: 1,
      // Version 1 didn't look how strings run: what wasn't measured stays unknown.
      name: 'how strings run, and flags inside the warp',
      migrate: (body) => {
        const kept = keptBefore.parse(body);
        const { reading } = kept;
        const ends = reading.ends.map((end) => ({ ...end, bow: null, runsTo: null }));
        const flags = reading.flags.map((flag) => ({ ...flag, xMm: null }));
        return { ...kept, reading: { ...reading, ends, flags } };
      },
    },
    {
      from: 2,
      name: 'lengths and a card can be marked too, the lens is noted',
      migrate: (body) => {
        const { points, reading, ...rest } = keptWithPoints.parse(body);
        const marks = points === null ? null : { corners: points, lengths: [], card: null };
        const reference = reading.reference === null ? null : { ...reading.reference, lens: null };
        return { ...rest, marks, reading: { ...reading, reference } };
      },
    },
    {
      from: 3,
      // Version 3 kept the words of one unit, which stay as they were said, and not which strings they spoke of.
      name: 'flags are worded in millimetres and in inches, and name their strings',
      migrate: (body) => {
        const kept = keptInOneUnit.parse(body);
        const { reading } = kept;
        const flags = reading.flags.map((flag) => ({
          ...flag,
          ends: [],
          message: { mm: flag.message, in: flag.message },
        }));
        return { ...kept, reading: { ...reading, flags } };
      },
    },
    {
      from: 4,
      // As with the flags of version 3: what was said in one unit stays as it was said.
      name: 'reasons are worded in millimetres and in inches',
      migrate: (body) => {
        const kept = keptReasonsInOneUnit.parse(body);
        const { reading } = kept;
        const reasons = reading.reasons.map((reason) => ({
          ...reason,
          message: { mm: reason.message, in: reason.message },
        }));
        return { ...kept, reading: { ...reading, reasons } };
      },
    },
    {
      from: 5,
      name: 'a reason may single out a figure of the plan',
      migrate: (body) => body,
    },
  ],
  body: checkRecordSchema,
  called: 'check',
};
