import type { EndReading } from '../model/check.ts';
import { type Measurement, measurement } from '../model/measurement.ts';
import type { ClothFrame } from './clothFrame.ts';
import type { EndFell } from './endFell.ts';
import type { StringTrack } from './loomPose.ts';

/** One sigma that all places of a picture share where one lies, mm. */
export type SharedSigma = (x: number, y: number) => { readonly x: number; readonly y: number };

/** What is told of every end, in the cloth frame, before floats are heard. */
export function endReadings(
  tracks: readonly StringTrack[],
  fells: readonly EndFell[],
  frame: ClothFrame,
  shared: SharedSigma,
): EndReading[] {
  return tracks.map((track): EndReading => {
    const found = fells.find((fell) => fell.end === track.end);
    const notchX = track.notchX && inCloth(track.notchX, frame);
    const unseen = { index: track.end, notchX, seen: false, fell: null, xAtFell: null, bow: null, runsTo: null };
    if (!found?.fell) return { ...unseen, why: found?.why ?? track.why ?? 'not seen' };
    const y = found.fell.value;
    const x = found.course.x(y + frame.baseY) - frame.centreX;
    const common = shared(x, y);
    const fell = measurement(y, Math.hypot(found.fell.sigma, common.y), found.fell.n, found.fell.source);
    const xAtFell = measurement(x, Math.hypot(found.course.sigma(y + frame.baseY), common.x), 1, 'string at the fell');
    return { ...unseen, seen: true, why: null, fell, xAtFell };
  });
}

const inCloth = (x: Measurement, frame: ClothFrame): Measurement => ({ ...x, value: x.value - frame.centreX });
