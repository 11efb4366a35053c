import type { BandView } from './bandView.ts';
import type { Blend } from './blend.ts';
import { bandViews } from './coarseLoom.ts';
import type { Expected } from './expected.ts';
import type { Photo } from './raster.ts';
import { firstLookReduction, reducePhoto } from './reduce.ts';
import { type TurnedPictures, turnedPictures } from './turnedPictures.ts';

/** The bands of strings a picture may hold, found once each by what they differ in from the table. */
export interface StringBands {
  /** A copy of the photograph reduced by `factor`, in whose pixels the bands are. */
  readonly source: TurnedPictures;
  readonly factor: number;
  /** Best first. */
  readonly by: (blend: Blend) => readonly BandView[];
}

export function stringBands(photo: Photo, expected: Expected): StringBands {
  const factor = firstLookReduction(photo, expected.openingHeight + 2 * expected.bar, expected.pitch);
  const source = turnedPictures(reducePhoto(photo, factor));
  const found = new Map<Blend, readonly BandView[]>();
  const by = (blend: Blend): readonly BandView[] => {
    const known = found.get(blend);
    if (known) return known;
    const views = bandViews(source, blend, expected);
    found.set(blend, views);
    return views;
  };
  return { source, factor, by };
}
