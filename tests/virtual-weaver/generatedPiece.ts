import type { Boundary, Piece, Shape, ShapeForm } from '../../src/core/model/piece.ts';
import { clothMm, mm, radians } from '../../src/core/model/units.ts';
import { parseBrief, pieceFromBrief } from '../../src/core/project/brief.ts';
import {
  arch,
  band,
  concave,
  diagonal,
  freehand,
  type Ground,
  holed,
  round,
  scribble,
  sliver,
} from './generatedForms.ts';
import { SeededRandom } from './seededRandom.ts';

const families = [
  'diagonals',
  'nested',
  'concave',
  'holes',
  'mirrored',
  'repeated',
  'bands',
  'freehand',
  'slivers',
  'pile',
] as const;
export type Family = (typeof families)[number];

export const familyOf = (seed: number): Family => families[seed % families.length] ?? 'pile';

/** Sizes come in three sorts: one piece in twenty-three is as large as 150 ends × 1,500 passes, half are tiny. */
function sizeOf(random: SeededRandom, seed: number): { readonly ends: number; readonly passes: number } {
  if (seed % 23 === 22) return { ends: random.whole(110, 150), passes: random.whole(900, 1_500) };
  if (random.chance(0.5)) return { ends: random.whole(2, 16), passes: random.whole(3, 60) };
  return { ends: random.size(12, 100), passes: random.size(40, 420) };
}

function shapeOf(form: ShapeForm, index: number, yarns: number, random: SeededRandom, plain: boolean): Shape {
  const boundary: Boundary =
    plain || random.chance(0.6) ? 'slit' : random.pick(['shared-end', 'interlocked', 'dovetailed']);
  return {
    id: `s${index}`,
    name: `Shape ${index + 1}`,
    yarn: `y${random.whole(0, yarns - 1)}`,
    form,
    rotation: radians(random.chance(0.25) ? random.between(-Math.PI, Math.PI) : 0),
    mirrorAbout: null,
    repeat: null,
    boundary,
    singlePass: !plain && random.chance(0.15),
    hidden: random.chance(0.03),
    locked: false,
  };
}

function formsOf(family: Family, random: SeededRandom, ground: Ground, pitch: number): ShapeForm[] {
  const some = (low: number, high: number, make: () => ShapeForm) =>
    Array.from({ length: random.whole(low, high) }, make);
  const anyForm = () => random.pick([diagonal, concave, round, holed, freehand, band, arch, scribble])(random, ground);
  switch (family) {
    case 'diagonals':
      return some(1, 3, () => diagonal(random, ground));
    case 'nested':
      return nested(random, ground);
    case 'concave':
      return some(1, 2, () => concave(random, ground));
    case 'holes':
      return [...some(0, 1, () => round(random, ground)), ...some(1, 2, () => holed(random, ground))];
    case 'mirrored':
    case 'repeated':
      return some(1, 2, () => random.pick([diagonal, round, concave, arch])(random, ground));
    case 'bands':
      return [...some(0, 2, () => diagonal(random, ground)), ...some(1, 5, () => band(random, ground))];
    case 'freehand':
      return some(1, 2, () => freehand(random, ground));
    case 'slivers':
      return some(1, 5, () => sliver(random, ground, pitch));
    case 'pile':
      return some(2, 6, anyForm);
  }
}

/** One shape inside another inside another, the innermost first because the first that contains a cell wins. */
function nested(random: SeededRandom, { halfWidth, height }: Ground): ShapeForm[] {
  const corners = random.pick([0, 3, 4, 5, 6, 8]);
  const depth = random.whole(2, 4);
  const [x, y] = [random.between(-0.2, 0.2) * halfWidth, random.between(0.4, 0.6) * height];
  const turn = random.between(0, Math.PI);
  return Array.from({ length: depth }, (_, index): ShapeForm => {
    const share = (index + random.between(0.5, 1)) / depth;
    const [radiusX, radiusY] = [halfWidth * share * 0.95, (height / 2) * share * 0.95];
    if (corners === 0) {
      return { kind: 'ellipse', centre: { x: clothMm(x), y: clothMm(y) }, radiusX: mm(radiusX), radiusY: mm(radiusY) };
    }
    return {
      kind: 'polygon',
      points: Array.from({ length: corners }, (_corner, corner) => {
        const angle = turn + (2 * Math.PI * corner) / corners;
        return { x: clothMm(x + radiusX * Math.cos(angle)), y: clothMm(y + radiusY * Math.sin(angle)) };
      }),
    };
  });
}

/**
 * Draws a piece no weaver has thought of: nested, concave, holed, mirrored, with edges from 5° to 85°, odd and even
 * ends, doubled and single warps. The same seed always gives the same piece.
 */
export function generatedPiece(seed: number): Piece {
  const random = new SeededRandom(seed);
  const family = familyOf(seed);
  const { ends, passes } = sizeOf(random, seed);
  const pitch = random.pick([3.175, 4, 5, 6.35, 8, 12.7]);
  const passHeight = Math.min(pitch * random.between(0.12, 0.5), 4_500 / passes);
  const yarns = random.whole(2, 5);
  const height = passes * passHeight;
  const headerPasses = Math.min(random.pick([0, 0, 1, 2, 3, 4, 6]), passes - 2);
  const ground: Ground = { halfWidth: (ends * pitch) / 2, height };
  const spareNotches = random.whole(0, 9);
  const brief = parseBrief({
    name: `Generated ${seed}, ${family}`,
    loom: {
      kind: 'notched frame',
      notch_pitch_mm: pitch,
      opening_width_mm: (ends + spareNotches + 2) * pitch,
      opening_height_mm: height + 200,
      bar_mm: 28,
      notches: ends + spareNotches,
      depth_mm: 18,
    },
    warp: {
      ends,
      strings_per_end: random.pick([1, 2]),
      string_diameter_mm: pitch * random.between(0.15, 0.3),
      first_notch: random.whole(0, spareNotches),
    },
    cloth: {
      base_above_bottom_bar_mm: 60,
      width_mm: ends * pitch,
      height_mm: height,
      pass_mm: passHeight,
      header_passes: Math.max(0, headerPasses),
    },
    yarns: ['#efe8da', '#8a5a3c', '#2f7f86', '#c8922b', '#2d3350'].slice(0, yarns),
    ground: random.whole(0, yarns - 1),
    header_yarn: random.whole(0, yarns - 1),
    shapes: [],
  });
  if (!brief.ok) throw new Error(`Seed ${seed}: ${brief.problem.sentence}`);
  const piece = pieceFromBrief(brief.value, '2026-11-25T09:00:00.000Z');
  const plain = random.chance(0.6);
  const shapes = formsOf(family, random, ground, pitch).map((form, index) => {
    const shape = shapeOf(form, index, yarns, random, plain);
    if (family === 'mirrored') {
      return { ...shape, mirrorAbout: clothMm(random.chance(0.8) ? 0 : random.between(-0.3, 0.3) * ground.halfWidth) };
    }
    if (family !== 'repeated') return shape;
    const repeat = {
      copies: random.whole(1, 4),
      dx: mm(random.between(-0.6, 0.6) * ground.halfWidth),
      dy: mm(random.between(0, 0.3) * height),
    };
    return { ...shape, repeat };
  });
  return {
    ...piece,
    cloth: { ...piece.cloth, footerPasses: Math.min(random.pick([0, 0, 2, 3]), passes - piece.cloth.headerPasses - 1) },
    shapes,
    making: { ...piece.making, hillLimit: mm(random.between(0.1, 1) * height) },
  };
}
