import type { PlaceSeen } from './countEnds.ts';
import type { Expected } from './expected.ts';

/** Notches by which all strings together stand aside of their planned places; 0 where that doesn't explain what is seen. */
export function movedBy(seen: readonly PlaceSeen[], ends: number): number {
  const unlike = (by: number): number =>
    seen.filter(({ place, present }) => present !== (place - by >= 0 && place - by < ends)).length;
  // As far as was looked on either side: on one of them something may have lain over all the notches beyond.
  const most = Math.max(...seen.map(({ place }) => Math.max(place - (ends - 1), -place)));
  let best = 0;
  for (let by = -most; by <= most; by++) if (unlike(by) < unlike(best)) best = by;
  return unlike(best) <= Math.max(1, 0.04 * ends) && unlike(best) < unlike(0) - Math.abs(best) ? best : 0;
}

/** Notches by which the warp's middle lies right of the loom's. */
export const offMiddle = ({ ends, firstNotch, notches }: Expected): number =>
  firstNotch + (ends - 1) / 2 - (notches - 1) / 2;
