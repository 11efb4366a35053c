import { z } from 'zod';
import { chartFits } from '../chart/gridLimit.ts';
import { failure, type Outcome, success } from '../model/outcome.ts';
import type { Making, Piece, Shape, ShapeForm, Yarn } from '../model/piece.ts';
import { clothMm, metres, mm, radians } from '../model/units.ts';

const finite = z.number();
const positive = finite.positive();
const count = z.number().int().nonnegative();
const colour = z.string().regex(/^#[0-9a-fA-F]{6}$/);
const point = z.tuple([finite, finite]);

const briefShape = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('poly'), pts: z.array(point).min(3).max(10_000), yarn: count }),
  z.strictObject({ kind: z.literal('circle'), c: point, r: positive, yarn: count }),
  z.strictObject({ kind: z.literal('band'), y: point, yarn: count }),
]);

/** The flat description a piece can be made from: what a weaver knows before weaving. Lengths in mm. */
export const briefSchema = z.strictObject({
  name: z.string().min(1).max(200),
  loom: z.strictObject({
    kind: z.string().max(100),
    notch_pitch_mm: positive.max(100),
    opening_width_mm: positive.max(5_000),
    opening_height_mm: positive.max(5_000),
    bar_mm: positive.max(500),
    notches: count.min(2).max(2_000),
    depth_mm: positive.max(500),
  }),
  warp: z.strictObject({
    ends: count.min(2).max(2_000),
    strings_per_end: z.union([z.literal(1), z.literal(2)]),
    string_diameter_mm: positive.max(20),
    first_notch: count,
  }),
  cloth: z.strictObject({
    base_above_bottom_bar_mm: finite.nonnegative(),
    width_mm: positive,
    height_mm: positive.max(5_000),
    pass_mm: positive.max(50),
    header_passes: count.max(1_000),
  }),
  yarns: z.array(colour).min(1).max(200),
  ground: count,
  header_yarn: count,
  shapes: z.array(briefShape).max(2_000),
  scale_card: z.string().max(200).nullable().optional(),
});

export type Brief = z.infer<typeof briefSchema>;

/** The making defaults of a new piece; each is a common practice, no source, and can be changed. */
export const usualMaking: Making = {
  workingLength: metres(4.8),
  tail: mm(40),
  fringe: mm(100),
  spare: 0.05,
  passesPerMinute: 2,
  hillLimit: mm(60),
  slitLimit: mm(20),
  allowance: mm(2),
  dowelSag: mm(2),
};

/**
 * Reads a flat description.
 * @returns the brief, or `brief-unreadable` naming the first field that is not as it should be.
 */
export function parseBrief(value: unknown): Outcome<Brief, 'brief-unreadable'> {
  const parsed = briefSchema.safeParse(value);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    const where = issue?.path.join('.') || 'the whole file';
    return failure(
      'brief-unreadable',
      `The description can't be used: ${where}: ${issue?.message ?? 'not understood'}.`,
      'Mend that field and try again; the README lists every field.',
    );
  }
  const brief = parsed.data;
  const used = [brief.ground, brief.header_yarn, ...brief.shapes.map((shape) => shape.yarn)];
  if (used.some((yarn) => yarn >= brief.yarns.length)) {
    return failure(
      'brief-unreadable',
      `The description names yarn ${Math.max(...used)}, but lists only ${brief.yarns.length}, counted from 0.`,
      'Add the yarn, or name one that is listed.',
    );
  }
  if (brief.warp.first_notch + brief.warp.ends > brief.loom.notches) {
    return failure(
      'brief-unreadable',
      `The description needs notch ${brief.warp.first_notch + brief.warp.ends}, but the loom has ${brief.loom.notches}.`,
      'Use fewer ends or start further left.',
    );
  }
  if (!chartFits(brief.warp.ends, brief.cloth.height_mm, brief.cloth.pass_mm)) {
    return failure(
      'brief-unreadable',
      'The description gives more passes than can be charted.',
      'Give the height of a pass, pass_mm, in millimetres; a usual one is about 1.',
    );
  }
  return success(brief);
}

/** Wood, yarn names and the like that a brief does not say are filled with plain defaults. */
export function pieceFromBrief(brief: Brief, now: string): Piece {
  const yarnId = (index: number) => `y${index}`;
  const yarns: Yarn[] = brief.yarns.map((hex, index) => ({
    id: yarnId(index),
    name: `Yarn ${index + 1}`,
    colour: hex.toLowerCase(),
    fibre: 'wool',
    count: null,
    label: null,
    wrapsPerCm: null,
    diameter: null,
    category: null,
    strands: 1,
    ballGrams: null,
  }));
  const form = (shape: Brief['shapes'][number]): ShapeForm => {
    switch (shape.kind) {
      case 'poly':
        return { kind: 'polygon', points: shape.pts.map(([x, y]) => ({ x: clothMm(x), y: clothMm(y) })) };
      case 'circle':
        return {
          kind: 'ellipse',
          centre: { x: clothMm(shape.c[0]), y: clothMm(shape.c[1]) },
          radiusX: mm(shape.r),
          radiusY: mm(shape.r),
        };
      case 'band':
        return { kind: 'band', from: clothMm(Math.min(...shape.y)), to: clothMm(Math.max(...shape.y)) };
    }
  };
  const shapes: Shape[] = brief.shapes.map((shape, index) => ({
    id: `s${index}`,
    name: `Shape ${index + 1}`,
    yarn: yarnId(shape.yarn),
    form: form(shape),
    rotation: radians(0),
    mirrorAbout: null,
    repeat: null,
    boundary: 'slit',
    singlePass: false,
    hidden: false,
    locked: false,
  }));
  return {
    name: brief.name,
    created: now,
    changed: now,
    units: 'mm',
    loom: {
      name: brief.loom.kind,
      notchPitch: mm(brief.loom.notch_pitch_mm),
      notches: brief.loom.notches,
      openingWidth: mm(brief.loom.opening_width_mm),
      openingHeight: mm(brief.loom.opening_height_mm),
      bar: mm(brief.loom.bar_mm),
      depth: mm(brief.loom.depth_mm),
    },
    warp: {
      ends: brief.warp.ends,
      stringsPerEnd: brief.warp.strings_per_end,
      stringDiameter: mm(brief.warp.string_diameter_mm),
      firstNotch: brief.warp.first_notch,
      yarnName: 'Warp',
      tex: null,
      colour: '#e9e2d0',
    },
    cloth: {
      baseAboveBottomBar: mm(brief.cloth.base_above_bottom_bar_mm),
      height: mm(brief.cloth.height_mm),
      passHeight: mm(brief.cloth.pass_mm),
      passHeightSource: 'planned',
      headerPasses: brief.cloth.header_passes,
      footerPasses: 0,
      headerYarn: yarnId(brief.header_yarn),
      ground: yarnId(brief.ground),
    },
    yarns,
    shapes,
    ornaments: [],
    making: usualMaking,
    notes: [],
  };
}
