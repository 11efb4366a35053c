import type { BandView } from './bandView.ts';
import { brightness, redAgainstGreen, yellowAgainstBlue } from './blend.ts';
import type { StringScale } from './linesAsFrame.ts';
import { enlargedCoordinate, reducedCoordinate } from './reduce.ts';
import type { StringBands } from './stringBands.ts';
import { toTurned } from './turned.ts';

/** A band with a smaller share of the clearest one's strings than this is no warp. */
const LESSER = 0.25;
/** So many bands are tried, and those that run and are spaced alike to within this share are one. */
const MOST = 3;
const ALIKE = 0.06;

/**
 * The clearest bands of strings of a picture as scales, each taking its strings to stand as far apart as planned.
 * @param reduced by how much the copy is reduced whose pixels the scales are asked for.
 */
export function seenPitches({ by, factor }: StringBands, reduced: number): StringScale[] {
  let views: readonly BandView[] = [];
  for (const blend of [brightness, yellowAgainstBlue, redAgainstGreen]) {
    views = by(blend);
    if (views.length > 0) break;
  }
  const apart: BandView[] = [];
  for (const view of views) {
    if (apart.length === MOST || view.band.score < LESSER * views[0]!.band.score) break;
    const middle = (of: BandView): number => of.scale((of.band.top + of.band.bottom) / 2);
    const same = (other: BandView): boolean =>
      other.angle === view.angle && Math.abs(middle(other) / middle(view) - 1) < ALIKE;
    if (!apart.some(same)) apart.push(view);
  }
  return apart.map(({ angle, frame, scale }) => ({
    direction: angle,
    at: (place) => {
      const own = (value: number) => reducedCoordinate(enlargedCoordinate(value, reduced), factor);
      return (scale(toTurned(frame, own(place.x), own(place.y)).y) * factor) / reduced;
    },
  }));
}
