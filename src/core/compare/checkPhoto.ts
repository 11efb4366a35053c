import { inBothUnits } from '../model/bothUnits.ts';
import type { LoomReading } from '../model/check.ts';
import { cornersMarked } from '../model/marks.ts';
import type { Piece } from '../model/piece.ts';
import type { LoomOptions } from '../photo/locateOptions.ts';
import { askAgain, measureLoom } from '../photo/measureLoom.ts';
import type { Photo } from '../photo/raster.ts';
import { compareReading } from './compareReading.ts';
import { liesMirrored } from './mirroredPicture.ts';

/**
 * The whole loom check of one photograph: measured, and where that worked, compared with the plan. A picture that shows
 * the plan left for right is asked about, unless it has been said whether the camera mirrors or marked corners tell it.
 */
export function checkPhoto(photo: Photo, piece: Piece, options: LoomOptions): LoomReading {
  const reading = measureLoom(photo, piece, options);
  if (reading.status !== 'measured') return reading;
  options.onStage?.('compare', 0, 1);
  const said = options.mirrored !== undefined && options.mirroredLikely !== true;
  if (!said && cornersMarked(options.marks) < 3 && liesMirrored(reading.colours, piece)) {
    return askAgain({
      code: 'maybe-mirrored',
      message: inBothUnits(() => 'The colours in the cloth lie as in a mirror image of the plan.'),
      remedy:
        'Say whether this camera shows left for right, then check again. If it doesn’t, the cartoon was woven the other way round: turn it in the plan.',
    });
  }
  return { ...reading, flags: compareReading(reading, piece).flags };
}
