import type { LoomReading } from '../model/check.ts';
import type { Piece } from '../model/piece.ts';
import type { PhotoPoint } from '../model/units.ts';
import { type LocateOptions, locateLoom } from './locateLoom.ts';
import { measureCloth } from './measureCloth.ts';
import type { Photo } from './raster.ts';

export interface MeasureOptions extends LocateOptions {
  /** Loom's bottom left, bottom right, top right, top left, as the weaver marked them; null to find it alone. */
  readonly points?: readonly PhotoPoint[] | null;
}

/**
 * One photograph against one piece: find the loom, then read the cloth. Flags come from comparing, which stands above.
 * Times are left to the caller, who hears of every stage through `onStage`.
 */
export function measureLoom(photo: Photo, piece: Piece, options: MeasureOptions): LoomReading {
  options.onStage?.('locate', 0, 1);
  const located = locateLoom(photo, piece, options);
  if (!located.ok) {
    const { tag, sentence, remedy } = located.problem;
    return {
      status: tag === 'unreadable-file' || tag === 'too-large' || tag === 'too-small' ? 'refused' : 'needs-reference',
      reasons: [{ code: tag, message: sentence, remedy }],
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
  const cloth = measureCloth(photo, piece, located.value, options.onStage);
  return {
    status: 'measured',
    reasons: [],
    reference: located.value.pose.reference,
    endsCounted: located.value.endsCounted,
    ...cloth,
    flags: [],
    timingMs: {},
  };
}
