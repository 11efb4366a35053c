import type { ReasonCode, ReferenceMethod } from '../model/check.ts';
import { measurement } from '../model/measurement.ts';
import { failure, type Outcome, success } from '../model/outcome.ts';
import type { Piece } from '../model/piece.ts';
import type { PhotoPoint } from '../model/units.ts';
import { type Camera, cameraToVector } from './camera.ts';
import { type CameraPrior, usualCamera } from './coarseCamera.ts';
import { cameraOtherWayUp } from './coarsePose.ts';
import { countEnds, type PlaceSeen } from './countEnds.ts';
import { cutOff } from './cutOff.ts';
import type { Expected } from './expected.ts';
import { expectedOf } from './expected.ts';
import { type FirstLook, firstLooks, mapOf } from './firstLook.ts';
import { frameLooks } from './frameLooks.ts';
import { type LocatedLoom, type LoomPose, type StringTrack, toLoom } from './loomPose.ts';
import { followSettings, lookSigma } from './measureStrings.ts';
import { movedBy, offMiddle } from './movedWarp.ts';
import { type FrameSide, oddSide } from './oddSide.ts';
import { cameraFromPoints } from './pointsCamera.ts';
import { FITTED, poseOf } from './poseFit.ts';
import { sharedSigmaOf } from './poseSigma.ts';
import { pictureQuality } from './quality.ts';
import type { Photo } from './raster.ts';
import { type ColourRaster, firstLookReduction, reducedCoordinate, reducePhoto, reductionFor } from './reduce.ts';
import { FRAME_CLEAR, refineOnNotches } from './refineOnNotches.ts';
import { type RefinedPose, refinePose, scaleOf } from './refinePose.ts';
import { stringPitch } from './stringPitch.ts';
import { baseEvidence, evidenceElsewhere } from './uprightness.ts';

export interface LocateOptions {
  /** The opening's inner corners, photo px: the loom's bottom left, bottom right, top right, top left. */
  readonly points?: readonly PhotoPoint[] | null;
  /** The picture shows left for right. Told by the points themselves when there are any. */
  readonly mirrored?: boolean;
  /** What an earlier picture or the picture's metadata says of the camera. */
  readonly camera?: Partial<CameraPrior>;
  /** A line of inner figures for a maintainer. */
  readonly trace?: (line: string) => void;
  readonly onStage?: (name: string, done: number, of: number) => void;
}

/** A frame look below this is tried after the combs: edges, wood, strings and upright together seldom reach it by chance. */
const FAIR_LOOK = 8.5;
/** Of the frame's eight edges as many must be there beyond chance for a last look. */
const FAINT_FRAME = 4;
/** Least share of the frame's edges that must be there for a loom to be believed. */
const FRAME_SEEN = 0.6;
/** The same where strings stand in nearly all notches of both bars. */
const FRAME_GLIMPSED = 0.45;
/** So large a share of the strings is nearly all. */
const NEARLY_ALL = 0.85;
/** Least share of a bar or rail, by its inner or its outer edge, for strings to be tied to it. */
const SIDE_CLEAR = 0.6;
/** Largest slant of the view that is measured, radians from straight above. */
const STEEPEST_VIEW = (25 * Math.PI) / 180;

const remedy = {
  again: 'Take the picture again from straight above, the whole frame in view, or click the four inner corners.',
  points: 'Click the four inner corners of the opening.',
};

/** Finds the loom in a photograph and ties it to millimetres. */
export function locateLoom(photo: Photo, piece: Piece, options: LocateOptions = {}): Outcome<LocatedLoom, ReasonCode> {
  const stage = (name: string, done: number) => options.onStage?.(name, done, 4);
  const expected = expectedOf(piece);
  const factor = reductionFor(photo, 1500);
  stage('quality', 0);
  const picture = reducePhoto(photo, factor);
  const quality = pictureQuality(photo, picture);
  if (quality && !options.points) return failure(quality.code, quality.message, quality.remedy);
  const prior: CameraPrior = { ...usualCamera(photo), ...options.camera };
  if (options.points) return fromPoints(photo, picture, factor, expected, prior, options.points, options);

  const mirrored = options.mirrored ?? false;
  let best: { support: number; found: Outcome<LocatedLoom, ReasonCode> } | null = null;
  for (const { camera, fromFrame } of looksInTurn(
    photo,
    picture,
    factor,
    expected,
    prior,
    mirrored,
    stage,
    options.trace,
  )) {
    const refine = (from: Camera): RefinedPose =>
      refineOnNotches(photo, picture, factor, from, expected, prior, mirrored, fromFrame, options.trace);
    const base = (of: Camera): number => baseEvidence(picture, reducedMap(of, photo, mirrored, factor), expected);
    let refined = refine(camera);
    const other = cameraOtherWayUp(refined.fit.camera, expected);
    // The frame looks the same either way up; the cloth begins at the bottom.
    if (refined.frameSupport >= FRAME_SEEN && base(other) > 1.4 * base(refined.fit.camera) + BASE_STEPS) {
      options.trace?.('the cloth begins at the other bar');
      refined = refine(other);
    }
    const support = refined.frameSupport;
    if (best && support < best.support + (best.found.ok ? 0.05 : -0.1)) continue;
    const toSmall = reducedMap(refined.fit.camera, photo, mirrored, factor);
    const sure = stringsSure(refined);
    const strings = refined.upperUsed || refined.lowerUsed;
    const doubt =
      support < (sure ? FRAME_GLIMPSED : strings ? FRAME_SEEN : FRAME_CLEAR)
        ? `frame ${support.toFixed(2)}`
        : support < FRAME_CLEAR && !sure && baseAstray(picture, toSmall, expected)
          ? 'the cloth begins elsewhere'
          : null;
    const found: Outcome<LocatedLoom, ReasonCode> =
      doubt !== null
        ? failure('no-loom', NO_FRAME, remedy.again, doubt)
        : ((sure ? null : disagreement(photo, expected, refined, mirrored)) ??
          (oddSide(picture, toSmall, expected) !== null
            ? failure('no-loom', NO_FRAME, remedy.again, 'table where wood should be')
            : finished(photo, expected, refined, mirrored, 'opening-and-notches', options)));
    options.trace?.(`frame ${support.toFixed(2)} ${found.ok ? 'measured' : `${found.problem.tag} ${doubt ?? ''}`}`);
    // A frame as planned with strings that aren't: no other look will say better.
    if (!found.ok && found.problem.tag === 'wrong-pitch') return found;
    if (best && !found.ok && (best.found.ok || support < best.support)) continue;
    best = { support, found };
    // A frame that is clear, or strings that stand in nearly all notches of both bars: no other look will say better.
    if (found.ok && (support > FRAME_CLEAR || (sure && support > FRAME_SEEN))) break;
  }
  const found = best?.found ?? failure('no-loom', 'No loom is seen in the picture.', remedy.again);
  if (found.ok || found.problem.tag !== 'no-loom') return found;
  return cutLoom(photo, expected) ?? found;
}

/**
 * Strings in nearly all notches of both bars, both bars seen and a rail: hardly anything else looks so, whatever hides
 * the rest. Without a rail gaps might be taken for strings.
 */
function stringsSure({ upperShare, lowerShare, frame }: RefinedPose): boolean {
  const seen = (side: FrameSide): number =>
    Math.max(...frame.edges.flatMap((edge) => (edge.side === side ? [edge.support] : [])));
  return (
    Math.min(upperShare, lowerShare) >= NEARLY_ALL &&
    Math.min(seen('bottom'), seen('top')) >= SIDE_CLEAR &&
    Math.max(seen('left'), seen('right')) >= SIDE_CLEAR
  );
}

/** Says so where strings are seen that the picture's border cuts. */
function cutLoom(photo: Photo, expected: Expected): Outcome<LocatedLoom, ReasonCode> | null {
  const cut = cutOff(photo, expected);
  if (!cut) return null;
  return cut.along.length > 0
    ? failure('bar-missing', 'Lines like strings run out of the picture: a bar of the loom isn’t in it.', remedy.again)
    : failure('loom-cut-off', 'The picture’s edge cuts through what may be strings.', remedy.again);
}

/** Colour change by which one beginning of the cloth must outdo another, grey levels. */
const BASE_STEPS = 30;

/** Whether the cloth plainly begins elsewhere than a look has it: then the look took other lines for the frame. */
function baseAstray(picture: ColourRaster, toSmall: ReturnType<typeof reducedMap>, expected: Expected): boolean {
  return evidenceElsewhere(picture, toSmall, expected) > 3 * baseEvidence(picture, toSmall, expected) + BASE_STEPS;
}

/** Loom mm to pixels of the reduced picture. */
function reducedMap(camera: Camera, photo: Photo, mirrored: boolean, factor: number) {
  const map = mapOf(camera, photo, mirrored);
  return (x: number, y: number, z = 0) => {
    const seen = map(x, y, z);
    return { x: reducedCoordinate(seen.x, factor), y: reducedCoordinate(seen.y, factor) };
  };
}

/** Least share of one side, by its inner or its outer edge, for that side to stand where the plan has it. */
const SIDE_SEEN = 0.4;
/** Share of the frame's edges from which on the frame is surer than the plan. */
const FRAME_SURE = 0.95;
const NO_FRAME = 'Strings may be there, but no frame of the size in the plan is seen around them.';
/** Shares of a pitch by which strings may seem nearer or wider than planned before the plan is doubted. */
const PITCH_OFF = 0.03;

/** What of the frame and the strings contradicts the plan, in words; null when nothing does. */
function disagreement(
  photo: Photo,
  expected: Expected,
  refined: RefinedPose,
  mirrored: boolean,
): Outcome<LocatedLoom, ReasonCode> | null {
  const map = mapOf(refined.fit.camera, photo, mirrored);
  for (const side of ['bottom', 'top', 'left', 'right'] as const) {
    const seen = Math.max(...refined.frame.edges.flatMap((edge) => (edge.side === side ? [edge.support] : [])));
    if (seen >= SIDE_SEEN) continue;
    const bar = side === 'bottom' || side === 'top';
    return failure(
      'references-disagree',
      `The ${side} ${bar ? 'bar' : 'rail'} is not where an opening of ${Math.round(expected.openingWidth)} × ${Math.round(expected.openingHeight)} mm has it.`,
      "Measure the opening's width and height again and correct them in the plan, or take the picture with the whole frame in view.",
    );
  }
  if (refined.upperShare > 0.7) return null;
  const pitch = stringPitch(photo, map, expected);
  const off = pitch === null ? 0 : Math.abs(pitch / expected.pitch - 1);
  if (pitch === null || off < PITCH_OFF) return null;
  // A frame not seen all round may itself be a little out; then it is the look that is doubted, not the plan.
  if (refined.frameSupport < FRAME_SURE || off < 2 * PITCH_OFF) {
    return failure('no-loom', NO_FRAME, remedy.again, `strings ${pitch.toFixed(2)} mm apart`);
  }
  return failure(
    'wrong-pitch',
    `The strings stand ${pitch.toFixed(2)} mm apart; the plan's notches are ${expected.pitch.toFixed(2)} mm apart.`,
    'Measure the notch pitch over ten notches and correct it in the plan, then check again.',
  );
}

/**
 * First cameras, the likeliest first: by the frame's own edges, then, only if they are asked for, by the combs of strings
 * at both bars, for frames that hardly stand out from the table.
 */
function* looksInTurn(
  photo: Photo,
  picture: ColourRaster,
  factor: number,
  expected: Expected,
  prior: CameraPrior,
  mirrored: boolean,
  stage: (name: string, done: number) => void,
  trace?: (line: string) => void,
): Generator<{ camera: Camera; fromFrame: boolean }> {
  stage('frame', 1);
  const frames = frameLooks(photo, expected, prior, mirrored, 3);
  for (const look of frames) {
    trace?.(
      `frame look ${look.score.toFixed(2)}: edges ${look.edges.toFixed(2)} wood ${look.wood.toFixed(2)} strings ${look.strings.toFixed(2)}/${look.between.toFixed(2)} base ${look.base.toFixed(0)}/${look.baseOther.toFixed(0)}`,
    );
    if (look.score < Math.max(frames[0]!.score - 2, FAIR_LOOK)) break;
    yield { camera: look.camera, fromFrame: true };
  }
  stage('strings', 2);
  const quick = firstLookReduction(photo, expected.openingHeight + 2 * expected.bar, expected.pitch);
  const small = quick === factor ? picture : reducePhoto(photo, quick);
  const looks = firstLooks(photo, small, quick, expected, prior, mirrored);
  for (const look of looks.slice(0, 3)) {
    trace?.(describeLook(look));
    if (look.score < looks[0]!.score - 3) break;
    yield { camera: look.camera, fromFrame: false };
  }
  const last = frames[0];
  if (last && last.score < FAIR_LOOK && last.edges > FAINT_FRAME) yield { camera: last.camera, fromFrame: true };
}

/** Four clicked corners give the first camera; strings and frame then say the rest where they are seen. */
function fromPoints(
  photo: Photo,
  picture: ColourRaster,
  factor: number,
  expected: Expected,
  prior: CameraPrior,
  points: readonly PhotoPoint[],
  options: LocateOptions,
): Outcome<LocatedLoom, ReasonCode> {
  const placed = cameraFromPoints(points, expected, prior, photo);
  if (!placed.ok) return placed;
  const { camera, mirrored } = placed.value;
  options.onStage?.('frame', 1, 4);
  const refined = refinePose(photo, picture, factor, camera, expected, prior, mirrored, true, options.trace);
  if (refined.frameSupport >= FRAME_SEEN) {
    options.onStage?.('ends', 3, 4);
    const fused = finished(photo, expected, refined, mirrored, 'fused', options);
    if (fused.ok) return fused;
  }
  // The picture doesn't confirm the plan's strings and frame: the clicked corners alone tie it to millimetres.
  return success(pointsAlone(photo, expected, placed.value, refined));
}

function pointsAlone(
  photo: Photo,
  expected: Expected,
  placed: { camera: Camera; covariance: Float64Array; mirrored: boolean; residualMm: number },
  refined: RefinedPose,
): LocatedLoom {
  const pose = poseReading(
    photo,
    expected,
    placed.camera,
    placed.covariance,
    9,
    placed.mirrored,
    'points',
    ['four clicked corners'],
    placed.residualMm,
  );
  const tracks = refined.ends.map(
    (end): StringTrack => ({
      end: end.end,
      why: 'the strings were not told apart',
      notchX: null,
      bare: [],
    }),
  );
  return { pose, endsCounted: 0, tracks };
}

function finished(
  photo: Photo,
  expected: Expected,
  refined: RefinedPose,
  mirrored: boolean,
  method: ReferenceMethod,
  options: LocateOptions,
): Outcome<LocatedLoom, ReasonCode> {
  const { fit } = refined;
  const tilt = Math.acos(Math.min(1, viewCosine(fit.camera)));
  if (tilt > STEEPEST_VIEW) {
    return failure(
      'too-tilted',
      `The picture is taken ${Math.round((tilt * 180) / Math.PI)}° from straight above.`,
      'Hold the camera level over the middle of the loom.',
    );
  }
  const settings = followSettings(expected, scaleOf(fit.camera, photo, mirrored, expected));
  const slopes = expected.ends > 0 ? upperSlopes(refined, photo, mirrored) : () => 0;
  // As far out as the warp's own mirror image about the loom's middle would reach.
  const beyond = Math.max(4, Math.ceil(2 * Math.abs(offMiddle(expected))) + 1);
  const seen = countEnds(photo, fit.camera, photo, mirrored, expected, settings, slopes, beyond);
  const counted = seen.filter((place) => place.present).length;
  const outside = seen.filter((place) => place.present && (place.place < 0 || place.place >= expected.ends));
  const missing = seen.filter((place) => !place.present && place.place >= 0 && place.place < expected.ends);
  options.trace?.(
    `counted ${counted} of ${expected.ends}; outside [${outside.map((place) => place.place)}] missing [${missing.map((place) => place.place)}]`,
  );
  if (counted < 0.5 * expected.ends) {
    return failure(
      'no-strings',
      `Only ${counted} of ${expected.ends} strings are seen.`,
      'Take the picture with light from the side, so that the strings stand out, or click the four inner corners.',
    );
  }
  const moved = movedBy(seen, expected.ends);
  if (moved !== 0 && options.mirrored === undefined && moved === -2 * offMiddle(expected)) {
    return failure(
      'maybe-mirrored',
      'The strings stand as far to one side of the loom’s middle as the plan has them to the other.',
      'Say whether this camera shows left for right, then check again. If it doesn’t, correct the first notch in the plan.',
    );
  }
  if (moved !== 0) {
    const notches = Math.abs(moved);
    return failure(
      'wrong-count',
      moved < 0
        ? `Counted in notches, the strings begin ${notches} farther left than planned.`
        : `Counted in notches, the strings begin ${notches} farther right than planned.`,
      'Correct the number of ends or the first notch in the plan, then check again.',
    );
  }
  const strung = seen.filter((place) => place.present).map(({ place }) => place);
  const outer = Math.max(0, Math.min(...strung)) + Math.max(0, expected.ends - 1 - Math.max(...strung));
  if (outside.length > 0 || outer > 1 || missing.length > Math.max(2, 0.12 * expected.ends)) {
    return failure(
      'wrong-count',
      `The plan has ${expected.ends} ends; the picture shows ${counted}.`,
      'Correct the number of ends or the first notch in the plan, then check again.',
    );
  }
  const parts = [
    ...(refined.upperUsed ? ['notch pitch at the top bar'] : []),
    ...(refined.lowerUsed ? ['notch pitch at the bottom bar'] : []),
    'both bars',
    'both rails',
    ...(method === 'fused' ? ['clicked corners'] : []),
  ];
  const pose = poseReading(
    photo,
    expected,
    fit.camera,
    fit.covariance,
    FITTED,
    mirrored,
    method,
    parts,
    fit.residualMm,
  );
  const tracks = refined.ends.map((end): StringTrack => trackOf(end, seen, pose));
  return success({ pose, endsCounted: counted, tracks });
}

function trackOf(end: RefinedPose['ends'][number], seen: readonly PlaceSeen[], pose: LoomPose): StringTrack {
  const place = seen.find((one) => one.place === end.end);
  const why = place?.why ?? (end.upper.length < 4 ? 'hidden above the cloth' : null);
  if (why !== null) return { end: end.end, why, notchX: null, bare: [] };
  const bare = end.upper
    .map((sample) => ({ ...toLoom(pose, sample.px, sample.py), sigma: lookSigma(sample) }))
    .sort((a, b) => a.y - b.y);
  return { end: end.end, why: null, notchX: measurement(end.notch, 0.12, bare.length, 'string at the top bar'), bare };
}

/** Cosine of the angle between the line of sight and the loom's own upright. */
function viewCosine(camera: Camera): number {
  const [x, y] = camera.turn;
  const angle = Math.hypot(...camera.turn);
  if (angle < 1e-9) return 1;
  return 1 - ((1 - Math.cos(angle)) * (x * x + y * y)) / (angle * angle);
}

/** x per mm of height near the top bar, of each end's upper part. */
function upperSlopes(refined: RefinedPose, photo: Photo, mirrored: boolean): (end: number) => number {
  const pose = poseOf(cameraToVector(refined.fit.camera), photo, mirrored);
  const slopes = refined.ends.map((end) => {
    const places = end.upper.map((sample) => toLoom(pose, sample.px, sample.py));
    const top = places[0];
    const low = places[places.length - 1];
    return top && low && top.y - low.y > 15 ? (top.x - low.x) / (top.y - low.y) : 0;
  });
  return (end) => slopes[end] ?? 0;
}

function poseReading(
  photo: Photo,
  expected: Expected,
  camera: Camera,
  covariance: Float64Array,
  covarianceSize: number,
  mirrored: boolean,
  method: ReferenceMethod,
  parts: readonly string[],
  residualMm: number,
): LoomPose {
  const { homography, lens } = poseOf(cameraToVector(camera), photo, mirrored);
  const floor = { x: 0.03 + 0.04 * expected.stringDiameter, y: 0.05 };
  const sharedSigma = sharedSigmaOf(camera, covariance, covarianceSize, photo, mirrored, floor);
  return {
    homography,
    lens,
    sharedSigma,
    reference: {
      method,
      parts,
      mmPerPx: 1 / scaleOf(camera, photo, mirrored, expected),
      residualMm,
      lensK1: lens.k1,
      lensK2: lens.k2,
      homography: [...homography],
      photoWidth: photo.width,
      photoHeight: photo.height,
      scaleSigma: sharedSigma(0, expected.openingHeight).y / expected.openingHeight,
      baseSigmaMm: sharedSigma(0, expected.base).y,
    },
  };
}

const describeLook = (look: FirstLook): string =>
  `${look.coarse.view.polarity} ${((look.coarse.view.angle * 180) / Math.PI).toFixed(0)}° ${look.bottomIsLower} score ${look.score.toFixed(2)} bars ${look.bars.toFixed(2)} rails ${look.rails.toFixed(2)} misfit ${look.misfit.toFixed(2)} strings ${look.strings.toFixed(2)}/${look.between.toFixed(2)} base ${look.base.toFixed(0)}/${look.baseMirrored.toFixed(0)} combs ${look.coarse.upperComb.points.length} ${look.coarse.lowerComb.points.length}`;
