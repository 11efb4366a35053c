import type { FittedLens } from '../../core/model/check.ts';
import type { Piece } from '../../core/model/piece.ts';
import type { EarlierLoom } from '../../core/photo/earlierLoom.ts';
import { type EarlierReference, referToEarlier } from '../../core/photo/earlierReference.ts';
import { expectedOf } from '../../core/photo/expected.ts';
import { lensOfFit } from '../../core/photo/knownLens.ts';
import { locateLoom } from '../../core/photo/locateLoom.ts';
import { matchViews } from '../../core/photo/matchViews.ts';
import type { Photo } from '../../core/photo/raster.ts';
import { matchCorners } from './cvPort.ts';
import type { EarlierPhoto } from './visionRequest.ts';

/** What is known of the new picture beside its pixels. */
interface NewPicture {
  readonly photo: Photo;
  readonly camera: string | null;
  readonly mirrored: boolean;
  readonly lens: FittedLens | null;
}

/**
 * Refers a picture to the earlier check of its piece. The check's own photograph is located anew, by the plan as it is
 * now and with what was marked in it, because a check keeps its figures and not the camera's uncertainty.
 * @param before the check's photograph.
 * @returns null where that photograph can't be located any more, or doesn't show the same loom and cloth beyond doubt.
 */
export function earlierReference(
  piece: Piece,
  now: NewPicture,
  earlier: EarlierPhoto,
  before: Photo,
  mirrors: (camera: string | null) => boolean,
): EarlierReference | null {
  const mirrored = mirrors(earlier.camera);
  const sameCamera = now.camera !== null && now.camera === earlier.camera;
  const located = locateLoom(before, piece, { marks: earlier.marks, mirrored, lens: sameCamera ? now.lens : null });
  if (!located.ok || located.value.tied === null) return null;
  const expected = expectedOf(piece);
  const fells = earlier.fells.map((fell) => (fell === null ? null : fell + expected.base));
  const { tied } = located.value;
  const loom: EarlierLoom = { photo: before, ...tied, mirrored, fells, when: earlier.when };
  const views = matchViews(now.photo, loom, expected, now.mirrored);
  const alike = matchCorners(views.before, views.now).map((pair) => views.lookAlike(pair.before, pair.now));
  const lens = now.lens ?? (sameCamera ? lensOfFit(tied, before) : null);
  const referred = referToEarlier(now.photo, loom, alike, expected, now.mirrored, lens);
  return referred.ok ? referred.value : null;
}
