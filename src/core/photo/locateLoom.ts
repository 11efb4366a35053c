import type { ReasonCode } from '../model/check.ts';
import { cornersMarked } from '../model/marks.ts';
import type { Piece } from '../model/piece.ts';
import { usualCamera } from './coarseCamera.ts';
import { expectedOf } from './expected.ts';
import { locateAlone } from './locateAlone.ts';
import { locateByEarlier } from './locateByEarlier.ts';
import { locateByMarks } from './locateByMarks.ts';
import type { LoomOptions } from './locateOptions.ts';
import type { LocatedLoom } from './loomPose.ts';
import { pictureQuality } from './quality.ts';
import type { Photo } from './raster.ts';
import { reducePhoto, reductionFor } from './reduce.ts';
import { refusal, type Sought } from './refusal.ts';

/**
 * Finds the loom in a photograph and ties it to millimetres: by what it shows of itself, by what was marked in it, and
 * where that doesn't do, by an earlier check of the same piece.
 */
export function locateLoom(photo: Photo, piece: Piece, given: LoomOptions = {}): Sought<LocatedLoom> {
  const { earlier, ...options } = given;
  const factor = reductionFor(photo, 1500);
  options.onStage?.('quality', 0, 4);
  const picture = reducePhoto(photo, factor);
  const { marks } = options;
  const corners = cornersMarked(marks);
  const quality = pictureQuality(photo, picture);
  if (quality && corners === 0) return refusal(quality.code, quality.message, quality.remedy);
  const prior = usualCamera(photo);
  const view = { photo, picture, factor, expected: expectedOf(piece), prior, mirrored: options.mirrored ?? false };
  if (marks && corners > 0) {
    // Four corners place a picture by themselves.
    return locateByMarks(view, marks, { ...options, earlier: corners < 4 ? (earlier?.() ?? null) : null });
  }
  const { found, explained } = locateAlone(view, options);
  if (found.ok) return found;
  const reference = UNPLACED.has(found.problem.code) ? earlier?.() : null;
  if (reference) {
    options.trace?.(`${found.problem.code}: placed by the earlier check?`);
    const placed = locateByEarlier(view, reference, options);
    if (placed.ok) return placed;
  }
  return explained();
}

/** What a picture is said to lack that an earlier check may stand in for. */
const UNPLACED: ReadonlySet<ReasonCode> = new Set(['no-loom', 'no-strings', 'wrong-count', 'references-disagree']);
