import { plainShape } from '../../src/core/cartoon/newShape.ts';
import type { Piece } from '../../src/core/model/piece.ts';
import { clothMm, mm } from '../../src/core/model/units.ts';
import { pieceFromBrief } from '../../src/core/project/brief.ts';

/** 60 eight-cornered shapes on 100 ends × 1 000 passes. */
export function crowdedPiece(now: string): Piece {
  const pitch = 6.35;
  const plain = pieceFromBrief(
    {
      name: 'Sixty lanterns',
      loom: {
        kind: 'notched frame',
        notch_pitch_mm: pitch,
        opening_width_mm: 800,
        opening_height_mm: 1300,
        bar_mm: 28,
        notches: 120,
        depth_mm: 18,
      },
      warp: { ends: 100, strings_per_end: 2, string_diameter_mm: 1.7, first_notch: 10 },
      cloth: { base_above_bottom_bar_mm: 65, width_mm: 635, height_mm: 1060, pass_mm: 1.06, header_passes: 4 },
      yarns: ['#2c3350', '#efe8da', '#c8962d'],
      ground: 0,
      header_yarn: 1,
      shapes: [],
    },
    now,
  );
  const shapes = Array.from({ length: 60 }, (_, index) => {
    const x = ((index % 6) - 2.5) * 98;
    const y = 70 + Math.floor(index / 6) * 102;
    const points = Array.from({ length: 8 }, (__, corner) => {
      const angle = (2 * Math.PI * corner) / 8 + 0.2;
      const far = corner % 2 === 0 ? 44 : 36;
      return { x: clothMm(x + far * Math.cos(angle)), y: clothMm(y + far * Math.sin(angle)) };
    });
    return plainShape(`s${index}`, `Lantern ${index + 1}`, plain.yarns[1 + (index % 2)]!.id, {
      kind: 'polygon',
      points,
    });
  });
  return { ...plain, cloth: { ...plain.cloth, passHeight: mm(1.06) }, shapes };
}
