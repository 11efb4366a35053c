import { join } from 'node:path';
import { loadPhoto, loadPiece } from '../../scripts/photo/loadPhoto.ts';
import { trueLoomToPhoto } from '../../scripts/photo/trueCamera.ts';
import type { Piece } from '../../src/core/model/piece.ts';
import type { EarlierLoom } from '../../src/core/photo/earlierLoom.ts';
import { referToEarlier } from '../../src/core/photo/earlierReference.ts';
import { expectedOf } from '../../src/core/photo/expected.ts';
import { locateLoom } from '../../src/core/photo/locateLoom.ts';
import { matchViews } from '../../src/core/photo/matchViews.ts';
import { measureCloth } from '../../src/core/photo/measureCloth.ts';
import type { Photo } from '../../src/core/photo/raster.ts';
import { matchCorners } from '../../src/main/vision/cvPort.ts';

const folder = 'tests/fixtures/earlier';

/** One rendered picture of a series, with where the renderer's camera put the loom. */
export async function sceneOf(name: string) {
  const file = (ending: string) => join(folder, `${name}.${ending}`);
  const photo = await loadPhoto(file('jpg'));
  return {
    photo,
    piece: loadPiece(file('brief.json')),
    truth: trueLoomToPhoto(file('truth.json'), file('brief.json'), photo),
  };
}

/** The loom of an earlier picture, located and read by itself. */
export function earlierLoomOf(photo: Photo, piece: Piece): EarlierLoom {
  const located = locateLoom(photo, piece);
  if (!located.ok || located.value.tied === null) throw new Error('the earlier picture isn’t measured');
  const { ends } = measureCloth(photo, piece, located.value).cloth;
  const fells = ends.map(({ fell }) => (fell === null ? null : fell.value + piece.cloth.baseAboveBottomBar));
  return { photo, ...located.value.tied, mirrored: false, fells, when: '2026-11-02T09:30:00.000Z' };
}

/** What an earlier loom says of a picture. */
export function refer(photo: Photo, earlier: EarlierLoom, piece: Piece) {
  const expected = expectedOf(piece);
  const views = matchViews(photo, earlier, expected, false);
  const alike = matchCorners(views.before, views.now).map(({ before, now }) => views.lookAlike(before, now));
  return referToEarlier(photo, earlier, alike, expected, false, null);
}

/** The picture as a looking-glass shows it. */
export function turnedOver(photo: Photo): Photo {
  const rgb = new Uint8Array(photo.rgb.length);
  for (let y = 0; y < photo.height; y++) {
    for (let x = 0; x < photo.width; x++) {
      const from = (y * photo.width + photo.width - 1 - x) * 3;
      rgb.set(photo.rgb.subarray(from, from + 3), (y * photo.width + x) * 3);
    }
  }
  return { ...photo, rgb };
}
