import type { LoomReading } from '../../core/model/check.ts';
import type { Piece } from '../../core/model/piece.ts';
import type { PhotoPoint } from '../../core/model/units.ts';
import type { Photo } from '../../core/photo/raster.ts';

/** Stands in until the measuring itself is there: it refuses every photograph and says why. */
export function measureLoom(
  _photo: Photo,
  _piece: Piece,
  _options: {
    readonly points: readonly PhotoPoint[] | null;
    readonly onStage?: (stage: string, done: number, of: number) => void;
  },
): LoomReading {
  return {
    status: 'refused',
    reasons: [{ code: 'internal', message: 'This build has no measuring yet.', remedy: 'Use a build that has it.' }],
    reference: null,
    endsCounted: null,
    ends: [],
    selvedge: [],
    ribs: [],
    pass: null,
    beat: [],
    colours: null,
    flags: [],
    timingMs: {},
  };
}
