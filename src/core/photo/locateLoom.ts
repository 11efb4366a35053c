import type { ReasonCode } from '../model/check.ts';
import { cornersMarked } from '../model/marks.ts';
import type { Piece } from '../model/piece.ts';
import { usualCamera } from './coarseCamera.ts';
import { expectedOf } from './expected.ts';
import { locateAlone } from './locateAlone.ts';
import { locateByEarlier } from './locateByEarlier.ts';
import { locateByMarks } from './locateByMarks.ts';
import type { LocateOptions } from './locateOptions.ts';
import type { LocatedLoom } from './loomPose.ts';
import { pictureQuality } from './quality.ts';
import type { Photo } from './raster.ts';
import { reducePhoto, reductionFor } from './reduce.ts';
import { refusal, type Sought } from './refusal.ts';

/** Finds the loom in a photograph and ties it to millimetres. */
export function locateLoom(photo: Photo, piece: Piece, options: LocateOptions = {}): Sought<LocatedLoom> {
  const factor = reductionFor(photo, 1500);
  options.onStage?.('quality', 0, 4);
  const picture = reducePhoto(photo, factor);
  const corners = cornersMarked(options.marks);
  const quality = pictureQuality(photo, picture);
  if (quality && corners === 0) return refusal(quality.code, quality.message, quality.remedy);
  const prior = usualCamera(photo);
  const view = { photo, picture, factor, expected: expectedOf(piece), prior, mirrored: options.mirrored ?? false };
  const { marks } = options;
  if (marks && corners > 0) return locateByMarks(view, marks, options);
  const found = locateAlone(view, options);
  if (found.ok || !options.earlier || !UNPLACED.has(found.problem.code)) return found;
  options.trace?.(`${found.problem.code}: placed by the earlier check?`);
  const placed = locateByEarlier(view, options.earlier, options);
  return placed.ok ? placed : found;
}

/** What a picture is said to lack that an earlier check may stand in for. */
const UNPLACED: ReadonlySet<ReasonCode> = new Set([
  'no-loom',
  'no-strings',
  'bar-missing',
  'loom-cut-off',
  'wrong-count',
  'references-disagree',
]);
