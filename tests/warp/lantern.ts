import type { Piece, Yarn } from '../../src/core/model/piece.ts';
import { mm } from '../../src/core/model/units.ts';
import { parseBrief, pieceFromBrief } from '../../src/core/project/brief.ts';

export interface LanternWishes {
  readonly ends?: number;
  readonly stringsPerEnd?: 1 | 2;
  readonly stringDiameter?: number;
  readonly pitch?: number;
  readonly firstNotch?: number;
  readonly notches?: number;
  readonly height?: number;
  readonly passHeight?: number;
  readonly units?: 'mm' | 'in';
  readonly yarn?: Partial<Yarn>;
}

/** The Harbour lantern on a quarter-inch frame, with one thing or another changed. */
export function lantern(wishes: LanternWishes = {}): Piece {
  const { ends = 33, stringsPerEnd = 2, stringDiameter = 1.7, pitch = 6.35, notches = 51 } = wishes;
  const brief = parseBrief({
    name: 'Harbour lantern',
    loom: {
      kind: 'notched frame',
      notch_pitch_mm: pitch,
      opening_width_mm: 330,
      opening_height_mm: 400,
      bar_mm: 28,
      notches,
      depth_mm: 18,
    },
    warp: {
      ends,
      strings_per_end: stringsPerEnd,
      string_diameter_mm: stringDiameter,
      first_notch: wishes.firstNotch ?? Math.floor((notches - ends) / 2),
    },
    cloth: {
      base_above_bottom_bar_mm: 65,
      width_mm: ends * pitch,
      height_mm: wishes.height ?? 260,
      pass_mm: wishes.passHeight ?? 1.06,
      header_passes: 3,
    },
    yarns: ['#2d3350', '#efe8da', '#c8922b'],
    ground: 0,
    header_yarn: 1,
    shapes: [{ kind: 'circle', c: [0, 130], r: 28, yarn: 2 }],
  });
  if (!brief.ok) throw new Error(brief.problem.sentence);
  const piece = pieceFromBrief(brief.value, '2026-11-25T09:00:00.000Z');
  const names = ['Ink wool', 'Cream wool', 'Ochre wool'];
  return {
    ...piece,
    units: wishes.units ?? 'mm',
    yarns: piece.yarns.map((yarn, index) => ({
      ...yarn,
      name: names[index] ?? yarn.name,
      diameter: mm(2.1),
      ...wishes.yarn,
    })),
  };
}
