import type { FittedLens, ReferenceMethod } from '../model/check.ts';
import { measurement } from '../model/measurement.ts';
import { success } from '../model/outcome.ts';
import { type Camera, cameraToVector } from './camera.ts';
import { OUTSIDE_PICTURE, type PlaceSeen } from './countEnds.ts';
import { OVER_NOTCH } from './coveredNotches.ts';
import { type Fused, fuseReferences, type Shown } from './fuseReferences.ts';
import { lensOfFit } from './knownLens.ts';
import type { LocateOptions, View } from './locateOptions.ts';
import { type LocatedLoom, type LoomPose, type StringTrack, toLoom } from './loomPose.ts';
import { type FollowedEnd, followSettings, lookSigma } from './measureStrings.ts';
import { movedBy, offMiddle } from './movedWarp.ts';
import { notchesHeld } from './notchesHeld.ts';
import { FITTED, poseOf } from './poseFit.ts';
import { sharedSigmaOf } from './poseSigma.ts';
import type { Photo } from './raster.ts';
import { type RefinedPose, scaleOf } from './refinePose.ts';
import { refusal, type Sought } from './refusal.ts';
import type { WarpInView } from './warpInView.ts';

/** Largest slant of the view that is measured, radians from straight above. */
export const STEEPEST_VIEW = (25 * Math.PI) / 180;

/** A camera fitted to what the picture shows, and the ends that were followed. */
type Followed = Pick<RefinedPose, 'ends' | 'upperUsed' | 'lowerUsed' | 'stringsIn'>;

/** What a frame seen all round gives, with its strings. */
export const seenFrame = (refined: RefinedPose): Omit<Shown, 'taken'> & { readonly wood: true } => ({
  fit: refined.fit,
  things: refined.things,
  witnesses: refined.upperUsed || refined.lowerUsed ? 2 : 1,
  wood: true,
});

const shownParts = ({ upperUsed, lowerUsed }: Followed, wood: boolean): string[] => [
  ...(upperUsed ? ['notch pitch at the top bar'] : []),
  ...(lowerUsed ? ['notch pitch at the bottom bar'] : []),
  ...(wood ? ['both bars', 'both rails'] : []),
];

/** How an earlier check is named among the references. @param when ISO 8601. */
export const earlierPart = (when: string): string => `earlier check of ${when}`;

/** Everything beside the picture itself that took part. */
export const givenParts = ({ used, lensUsed, earlierUsed }: Fused): string[] => {
  const has = (kind: Fused['used'][number]['kind']) => used.some((one) => one.kind === kind);
  return [
    ...(has('corner') ? ['clicked corners'] : []),
    ...(has('length') ? ['known length'] : []),
    ...(has('card') ? ['card'] : []),
    ...(earlierUsed === null ? [] : [earlierPart(earlierUsed)]),
    ...(lensUsed ? ['lens known from earlier pictures'] : []),
  ];
};

/**
 * Fuses what the picture shows with what else is given, then holds the strings against the plan: their number, and at
 * which notch they begin.
 * @param shown `wood` when the frame itself took part.
 * @param placed the earlier check that placed the picture in the frame's stead, and what of the warp it holds.
 */
export function finishedLoom(
  view: View,
  followed: Followed,
  shown: Shown & { readonly wood: boolean },
  options: LocateOptions,
  placed: { readonly when: string; readonly inView: WarpInView } | null = null,
): Sought<LocatedLoom> {
  const { photo, expected, mirrored } = view;
  const earlier = placed === null ? (options.earlier ?? null) : null;
  const fused = fuseReferences(shown, { marks: options.marks ?? null, lens: options.lens ?? null, earlier }, view);
  if (!fused.ok) return fused;
  const { fit, used, remarks } = fused.value;
  const tilt = slantOf(fit.camera);
  if (tilt > STEEPEST_VIEW) {
    return refusal(
      'too-tilted',
      `The picture is taken ${Math.round((tilt * 180) / Math.PI)}° from straight above.`,
      'Hold the camera level over the middle of the loom.',
    );
  }
  const settings = followSettings(expected, scaleOf(fit.camera, photo, mirrored, expected));
  const slopes = expected.ends > 0 ? upperSlopes(followed.ends, fit.camera, photo, mirrored) : () => 0;
  // As far out as the warp's own mirror image about the loom's middle would reach.
  const beyond = Math.max(4, Math.ceil(2 * Math.abs(offMiddle(expected))) + 1);
  const look = { photo: followed.stringsIn, camera: fit.camera, settings, slopes, beyond };
  const { places, below, atBottom } = notchesHeld(look, view, placed?.inView ?? null);
  const seen = places.filter(({ why }) => why !== OUTSIDE_PICTURE);
  const planned = seen.filter(({ place }) => place >= 0 && place < expected.ends);
  const counted = seen.filter((place) => place.present).length;
  const outside = seen.filter((place) => place.present && (place.place < 0 || place.place >= expected.ends));
  const covered = planned.filter(({ why }) => why === OVER_NOTCH);
  const unsure = covered.filter(({ place }) => !below.has(place));
  const missing = planned.filter(({ present, why }) => !present && why !== OVER_NOTCH);
  options.trace?.(
    `counted ${counted} of ${planned.length}; outside [${outside.map((place) => place.place)}] missing [${missing.map((place) => place.place)}] covered [${covered.map((place) => place.place)}] not seen below either [${unsure.map((place) => place.place)}]`,
  );
  if (counted < 0.5 * expected.ends || counted < 0.5 * planned.length) {
    return refusal(
      'no-strings',
      `Only ${counted} of ${expected.ends} strings are seen.`,
      'Take the picture with light from the side, so that the strings stand out, or click the four inner corners.',
    );
  }
  const moved = movedBy(
    seen.filter(({ why }) => why !== OVER_NOTCH),
    expected.ends,
  );
  if (moved !== 0 && options.mirrored === undefined && moved === -2 * offMiddle(expected)) {
    return refusal(
      'maybe-mirrored',
      'The strings stand as far to one side of the loom’s middle as the plan has them to the other.',
      'Say whether this camera shows left for right, then check again. If it doesn’t, correct the first notch in the plan.',
    );
  }
  if (moved !== 0) {
    const notches = Math.abs(moved);
    return refusal(
      'wrong-count',
      moved < 0
        ? `Counted in notches, the strings begin ${notches} farther left than planned.`
        : `Counted in notches, the strings begin ${notches} farther right than planned.`,
      'Correct the number of ends or the first notch in the plan, then check again.',
    );
  }
  const sure = planned.filter((place) => covered.includes(place) && !unsure.includes(place));
  const strung = [...seen.filter((place) => place.present), ...sure].map(({ place }) => place);
  const [first, last] = [planned[0]!.place, planned[planned.length - 1]!.place];
  const outer = Math.max(0, Math.min(...strung) - first) + Math.max(0, last - Math.max(...strung));
  const outerHidden = unsure.filter(({ place }) => place < Math.min(...strung) || place > Math.max(...strung));
  if (outside.length === 0 && outer > 1 && outer === outerHidden.length) {
    // A loom's rail, or a table where there is no string at all, may look the same: they aren't taken to be there.
    return refusal(
      'no-strings',
      `Something lies over the notches of ${outer} outer ends, so it can’t be seen whether their strings are there.`,
      'Take away what lies over the bar, then take the picture again. If nothing lies there, correct the number of ends in the plan.',
    );
  }
  if (outside.length > 0 || outer > 1 || missing.length > Math.max(2, 0.12 * expected.ends)) {
    return refusal(
      'wrong-count',
      `The plan has ${expected.ends} ends; the picture shows ${counted}.`,
      'Correct the number of ends or the first notch in the plan, then check again.',
    );
  }
  const placedBy = placed === null ? [] : [earlierPart(placed.when)];
  const byHue = followed.stringsIn === photo ? [] : ['strings told from their shadows by hue'];
  const fromBelow = atBottom ? ['strings counted at the bottom bar'] : [];
  const parts = [...placedBy, ...shownParts(followed, shown.wood), ...byHue, ...fromBelow, ...givenParts(fused.value)];
  const alone = placed !== null ? 'earlier-check' : shown.wood ? 'opening-and-notches' : 'notches';
  const method = used.length > 0 ? 'fused' : alone;
  const { camera, covariance, residualMm } = fit;
  const lens = lensOfFit(fit, photo);
  const pose = poseReading(view, { camera, covariance, size: FITTED, residualMm, method, parts, lens }, mirrored);
  const tracks = followed.ends.map((end): StringTrack => {
    const track = trackOf(end, places, pose);
    const cut = placed !== null && !placed.inView.whole(end.end);
    return cut ? { end: end.end, why: OUTSIDE_PICTURE, notchX: null, bare: [] } : track;
  });
  const endsCounted = planned.length === expected.ends && unsure.length === 0 ? counted + sure.length : null;
  return success({ pose, tied: fit, endsCounted, tracks, remarks });
}

function trackOf(end: FollowedEnd, seen: readonly PlaceSeen[], pose: LoomPose): StringTrack {
  const place = seen.find((one) => one.place === end.end);
  const why = place?.why ?? (end.upper.length < 4 ? 'hidden above the cloth' : null);
  if (why !== null) return { end: end.end, why, notchX: null, bare: [] };
  const bare = end.upper
    .map((sample) => ({ ...toLoom(pose, sample.px, sample.py), sigma: lookSigma(sample) }))
    .sort((a, b) => a.y - b.y);
  return { end: end.end, why: null, notchX: measurement(end.notch, 0.12, bare.length, 'string at the top bar'), bare };
}

/** Angle between the line of sight and the loom's own upright, radians. */
export const slantOf = (camera: Camera): number => Math.acos(Math.min(1, viewCosine(camera)));

/** Cosine of the angle between the line of sight and the loom's own upright. */
function viewCosine(camera: Camera): number {
  const [x, y] = camera.turn;
  const angle = Math.hypot(...camera.turn);
  if (angle < 1e-9) return 1;
  return 1 - ((1 - Math.cos(angle)) * (x * x + y * y)) / (angle * angle);
}

/** x per mm of height near the top bar, of each end's upper part. */
function upperSlopes(
  ends: readonly FollowedEnd[],
  camera: Camera,
  photo: Photo,
  mirrored: boolean,
): (end: number) => number {
  const pose = poseOf(cameraToVector(camera), photo, mirrored);
  const slopes = ends.map((end) => {
    const places = end.upper.map((sample) => toLoom(pose, sample.px, sample.py));
    const top = places[0];
    const low = places[places.length - 1];
    return top && low && top.y - low.y > 15 ? (top.x - low.x) / (top.y - low.y) : 0;
  });
  return (end) => slopes[end] ?? 0;
}

/** How a picture was tied to millimetres, before it is a pose. */
interface Tied {
  readonly camera: Camera;
  /** `size` × `size`, camera parameters first. */
  readonly covariance: Float64Array;
  readonly size: number;
  readonly residualMm: number;
  readonly method: ReferenceMethod;
  readonly parts: readonly string[];
  readonly lens: FittedLens | null;
}

export function poseReading({ photo, expected }: View, tied: Tied, mirrored: boolean): LoomPose {
  const { camera, covariance, size, residualMm, method, parts } = tied;
  const { homography, lens } = poseOf(cameraToVector(camera), photo, mirrored);
  const floor = { x: 0.03 + 0.04 * expected.stringDiameter, y: 0.05 };
  const sharedSigma = sharedSigmaOf(camera, covariance, size, photo, mirrored, floor);
  return {
    homography,
    lens,
    focal: Math.exp(camera.logFocal),
    sharedSigma,
    reference: {
      method,
      parts,
      mmPerPx: 1 / scaleOf(camera, photo, mirrored, expected),
      residualMm,
      lensK1: lens.k1,
      lensK2: lens.k2,
      lens: tied.lens,
      homography: [...homography],
      photoWidth: photo.width,
      photoHeight: photo.height,
      scaleSigma: sharedSigma(0, expected.openingHeight).y / expected.openingHeight,
      baseSigmaMm: sharedSigma(0, expected.base).y,
    },
  };
}
