import type { Piece } from '../../core/model/piece.ts';
import { pieceFromBrief } from '../../core/project/brief.ts';
import type { Words } from '../words/en.ts';

/**
 * A plain new piece on a usual small frame: quarter-inch notches, doubled warp, an odd count of ends so that a point
 * falls on one. Every figure is a common practice, no source, and is there to be typed over.
 */
export function newPiece(name: string, units: 'mm' | 'in', now: string, called: Words['firstRun']['called']): Piece {
  const piece = pieceFromBrief(
    {
      name,
      loom: {
        kind: called.loom,
        notch_pitch_mm: 6.35,
        opening_width_mm: 330,
        opening_height_mm: 400,
        bar_mm: 28,
        notches: 51,
        depth_mm: 18,
      },
      warp: { ends: 33, strings_per_end: 2, string_diameter_mm: 1.7, first_notch: 9 },
      cloth: { base_above_bottom_bar_mm: 65, width_mm: 209.55, height_mm: 260, pass_mm: 1.06, header_passes: 4 },
      yarns: ['#2c3350', '#efe8da'],
      ground: 0,
      header_yarn: 1,
      shapes: [],
    },
    now,
  );
  const yarns = piece.yarns.map((yarn, index) => ({ ...yarn, name: called.yarn(index + 1) }));
  return { ...piece, units, yarns, warp: { ...piece.warp, yarnName: called.warp } };
}
