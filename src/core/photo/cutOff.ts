import type { BandView } from './bandView.ts';
import { brightness, redAgainstGreen, yellowAgainstBlue } from './blend.ts';
import { bandViews } from './coarseLoom.ts';
import type { Expected } from './expected.ts';
import type { Photo } from './raster.ts';
import { reducePhoto, reductionFor } from './reduce.ts';
import { toSource } from './turned.ts';
import { turnedPictures } from './turnedPictures.ts';

/** How strings leave a picture that doesn't hold the whole loom. */
export interface CutOff {
  /** Sides at which strings run out of the picture along their own direction: a bar lies beyond. */
  readonly along: readonly PictureSide[];
  /** Sides at which the band of strings itself is cut: strings lie beyond. */
  readonly across: readonly PictureSide[];
}
export type PictureSide = 'top' | 'bottom' | 'left' | 'right';

/** Long side of the copy that is looked at, px: coarse is enough to see where strings run to. */
const LONGEST = 1000;
/** Half a loom held close may show this many times larger than a whole one would. */
const CLOSEST = 2;
/** Strings and length of strings that must be seen before anything is said: shares of the plan's ends, of the picture. */
const FEWEST = 0.4;
const SHORTEST = 0.25;
/** Strings that end nearer to the border than this share of the picture's long side run out of it. */
const BORDER = 0.03;
/** So many pitches from the border the next string would lie outside the picture. */
const NEXT = 1.1;

/**
 * Looks for a band of strings that the picture's border cuts.
 * @returns null where no band of strings is seen, or all of it lies within the picture.
 */
export function cutOff(photo: Photo, expected: Expected): CutOff | null {
  const picture = reducePhoto(photo, reductionFor(photo, LONGEST));
  const source = turnedPictures(picture);
  const long = Math.max(picture.width, picture.height);
  const told = ({ band }: BandView): boolean =>
    band.count >= Math.max(8, FEWEST * expected.ends) && band.bottom - band.top >= SHORTEST * long;
  let view: BandView | undefined;
  for (const blend of [brightness, redAgainstGreen, yellowAgainstBlue]) {
    view = bandViews(source, blend, expected, 2, CLOSEST)[0];
    if (view && told(view)) break;
  }
  if (!view || !told(view)) return null;
  const { band, frame } = view;
  const sideNear = (x: number, y: number, reach: number): PictureSide | null => {
    const at = toSource(frame, x, y);
    const far: readonly (readonly [PictureSide, number])[] = [
      ['left', at.x],
      ['right', picture.width - 1 - at.x],
      ['top', at.y],
      ['bottom', picture.height - 1 - at.y],
    ];
    const nearest = far.reduce((a, b) => (b[1] < a[1] ? b : a));
    return nearest[1] < reach ? nearest[0] : null;
  };
  const middle = (y: number): number => (band.left(y) + band.right(y)) / 2;
  const halfway = (band.top + band.bottom) / 2;
  const found = (list: readonly (PictureSide | null)[]): PictureSide[] => list.filter((side) => side !== null);
  const along = found([band.top, band.bottom].map((y) => sideNear(middle(y), y, BORDER * long)));
  const across = found(
    [band.left, band.right].map((edge) => sideNear(edge(halfway), halfway, NEXT * band.period(halfway))),
  );
  return along.length + across.length > 0 ? { along, across } : null;
}
