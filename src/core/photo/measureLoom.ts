import { inBothUnits } from '../model/bothUnits.ts';
import type { LoomReading, Reason } from '../model/check.ts';
import { cornersMarked } from '../model/marks.ts';
import type { Piece } from '../model/piece.ts';
import { locateLoom } from './locateLoom.ts';
import type { LoomOptions } from './locateOptions.ts';
import { type ClothReading, measureCloth } from './measureCloth.ts';
import type { Photo } from './raster.ts';
import { unmeasured } from './unmeasured.ts';

/**
 * One photograph against one piece: find the loom, then read the cloth. Flags come from comparing, which stands above.
 * Times are left to the caller, who hears of every stage through `onStage`.
 */
export function measureLoom(photo: Photo, piece: Piece, options: LoomOptions): LoomReading {
  options.onStage?.('locate', 0, 1);
  const located = locateLoom(photo, piece, options);
  if (!located.ok) {
    const { detail: _, ...reason } = located.problem;
    return askAgain(reason);
  }
  const { cloth, elsewhere } = measureCloth(photo, piece, located.value, options.onStage);
  // The loom may have been found the other way up; where the weaver marked all its corners, the marks say.
  if (elsewhere && cornersMarked(options.marks) < 4) return askAgain(ELSEWHERE);
  return {
    status: 'measured',
    reasons: showsCloth(cloth) ? located.value.remarks : [...located.value.remarks, NOTHING_WOVEN],
    reference: located.value.pose.reference,
    endsCounted: located.value.endsCounted,
    ...cloth,
    flags: [],
    timingMs: {},
  };
}

const showsCloth = (cloth: ClothReading): boolean =>
  cloth.selvedge.length > 0 || cloth.ends.some((end) => end.fell !== null);

const ELSEWHERE: Reason = {
  code: 'no-loom',
  message: inBothUnits(() => 'Cloth is seen, but not where it should begin above the bottom bar.'),
  remedy: 'Click the four inner corners, those of the bottom bar where the cloth begins.',
};

const NOTHING_WOVEN: Reason = {
  code: 'nothing-woven',
  message: inBothUnits(() => 'Strings are seen, but no woven cloth.'),
  remedy: 'If something is woven, take the picture again in focus and with light from the side.',
};

/** A photograph that wasn't measured, and why: refused where the file itself is at fault, else asked about. */
export function askAgain(reason: Reason): LoomReading {
  const refused = reason.code === 'unreadable-file' || reason.code === 'too-large' || reason.code === 'too-small';
  return unmeasured(refused ? 'refused' : 'needs-reference', reason);
}
