import { believedStrings } from './believedStrings.ts';
import { type Camera, cameraToVector } from './camera.ts';
import { BAR_ROUNDING, type CameraPrior, OUTER_ROUNDING, usualWood, type WoodShape } from './coarseCamera.ts';
import type { Expected } from './expected.ts';
import { mapOf } from './firstLook.ts';
import { type FrameEdges, frameEdges } from './frameEdges.ts';
import { frameThings, loosePlace, stringThings } from './knownThings.ts';
import { type FollowedEnd, followSettings, measureStrings } from './measureStrings.ts';
import { fitPose, type PoseFit, poseOf, type StraightThing } from './poseFit.ts';
import { railsSeen } from './railsSeen.ts';
import type { Photo } from './raster.ts';
import { type ColourRaster, reducedCoordinate } from './reduce.ts';
import { colourBehind, withoutShade } from './withoutShade.ts';

/** The loom as finely as the picture gives it. */
export interface RefinedPose {
  readonly fit: PoseFit;
  /** What it was fitted to: strings and edges of the wood. */
  readonly things: readonly StraightThing[];
  readonly ends: readonly FollowedEnd[];
  readonly frame: FrameEdges;
  /** Share of the frame's edges that are truly there, 0–1. */
  readonly frameSupport: number;
  /** Whether the strings' upper and lower parts took part. */
  readonly upperUsed: boolean;
  readonly lowerUsed: boolean;
  /** Shares of the ends whose upper and lower strings stand at their notches. */
  readonly upperShare: number;
  readonly lowerShare: number;
  /** The photograph, or the photograph without shade where strings' shadows would be followed in it. */
  readonly stringsIn: Photo;
}

/** px per mm in the middle of the loom. */
export function scaleOf(camera: Camera, photo: Photo, mirrored: boolean, expected: Expected): number {
  const map = mapOf(camera, photo, mirrored);
  const y = expected.openingHeight / 2;
  const a = map(-10, y);
  const b = map(10, y);
  return Math.hypot(b.x - a.x, b.y - a.y) / 20;
}

/** Outer edges of all four sides and inner edges of the rails: where teeth and strings don't disturb them. */
function supportOf(frame: FrameEdges): number {
  const clear = frame.edges.filter((edge) => edge.kind === 'outer' || edge.side === 'left' || edge.side === 'right');
  return clear.reduce((sum, edge) => sum + edge.support, 0) / clear.length;
}

/** How far two cameras put the opening's corners apart, mm. */
function largestMove(a: Camera, b: Camera, photo: Photo, mirrored: boolean, expected: Expected): number {
  const before = mapOf(a, photo, mirrored);
  const after = mapOf(b, photo, mirrored);
  const half = expected.openingWidth / 2;
  let most = 0;
  for (const x of [-half, half]) {
    for (const y of [0, expected.openingHeight]) {
      const p = before(x, y);
      const q = after(x, y);
      most = Math.max(most, Math.hypot(p.x - q.x, p.y - q.y));
    }
  }
  return most / scaleOf(a, photo, mirrored, expected);
}

/** The comb gave the first scale; a fit that leaves it by more than this factor follows lines that are no loom's. */
const MOST_DRIFT = 1.5;

/** From so many sigma of what cameras usually are on, a camera that had to be bent so far to fit is believed less. */
const ODD_CAMERA = 4;

/** 1 for a rounding of the wood's edges as wood has it and a usual camera, falling to 0 where there are none such. */
function plausible({ wood: [inner, outer], camera }: PoseFit, prior: CameraPrior): number {
  const off = Math.max(
    Math.abs(inner - BAR_ROUNDING.mm) / BAR_ROUNDING.sigma,
    Math.abs(outer - OUTER_ROUNDING.mm) / OUTER_ROUNDING.sigma,
    Math.abs(camera.logFocal - prior.logFocal) / prior.logFocalSigma - ODD_CAMERA + 2.5,
  );
  return Math.max(0, Math.min(1, (5 - off) / 2.5));
}

const ROUNDS = 3;
/** With a frame so far seen it is gone on with, for so many rounds at most, until nothing moves by more than this, mm. */
const WORTH_MORE = 0.75;
const MOST_ROUNDS = 12;
const SETTLED = 0.05;
/** Share of the frame's edges below which a second round is in vain. */
const HOPELESS = 0.2;
/** Samples of a string next to the bar: about 30 mm. */
const FEET = 20;

/** Where fewer upper strings than this share are believed, shadows may have been followed. */
const FOLLOWED = 0.8;

const reducedMap = (camera: Camera, photo: Photo, factor: number, mirrored: boolean) => {
  const toPhoto = mapOf(camera, photo, mirrored);
  return (x: number, y: number, z?: number) => {
    const seen = toPhoto(x, y, z);
    return { x: reducedCoordinate(seen.x, factor), y: reducedCoordinate(seen.y, factor) };
  };
};

/** A first camera found by combs may be some millimetres out: strings alone bring it near enough to tell edges apart. */
function nearByStrings(
  photo: Photo,
  camera: Camera,
  expected: Expected,
  prior: CameraPrior,
  mirrored: boolean,
): { camera: Camera; ends: FollowedEnd[] } {
  const settings = followSettings(expected, scaleOf(camera, photo, mirrored, expected));
  const ends = measureStrings(photo, camera, photo, mirrored, expected, settings);
  const things = [...stringThings(ends, expected, new Set()), ...loosePlace(camera, photo, mirrored, expected)];
  const moved = fitPose(things, camera, usualWood, prior, photo, mirrored).camera;
  // Few or false strings can throw the camera off; the first one is the better guess then.
  return { camera: largestMove(camera, moved, photo, mirrored, expected) < 2 * expected.pitch ? moved : camera, ends };
}

/** Strings followed in the picture without shade; null where the plan has too few gaps to know what lies behind. */
function withoutShadows(
  photo: Photo,
  camera: Camera,
  expected: Expected,
  mirrored: boolean,
): { picture: Photo; ends: FollowedEnd[] } | null {
  const behind = colourBehind(photo, mapOf(camera, photo, mirrored), expected);
  if (!behind) return null;
  const picture = withoutShade(photo, behind);
  const settings = followSettings(expected, scaleOf(camera, photo, mirrored, expected));
  return { picture, ends: measureStrings(picture, camera, photo, mirrored, expected, settings) };
}

/**
 * Follows strings and frame edges in the full photograph and fits camera and lens to them, a few times over, as each
 * better camera tells better what is string and what is edge.
 * @param picture a reduced copy, by `factor`, for the frame's edges.
 * @param fromFrame the first camera was found by the frame, to a millimetre or two; else by the strings.
 */
export function refinePose(
  photo: Photo,
  picture: ColourRaster,
  factor: number,
  start: Camera,
  planned: Expected,
  prior: CameraPrior,
  mirrored: boolean,
  fromFrame: boolean,
  trace?: (line: string) => void,
): RefinedPose {
  let camera = start;
  let shape: WoodShape = usualWood;
  let refined: RefinedPose | null = null;
  const startScale = scaleOf(start, photo, mirrored, planned);
  const loose = Math.min(1.5, 0.28 * planned.pitch);
  const framed = (from: Camera, reach: number) => {
    const frame = frameEdges(picture, factor, reducedMap(from, photo, factor, mirrored), expected, reach);
    return { camera: { ...from, aimY: from.aimY + frame.shift }, frame };
  };
  // Combs give the strings' places well but the frame's badly; the frame gives the frame's well and the strings' fairly.
  const byCombs = fromFrame ? null : nearByStrings(photo, camera, planned, prior, mirrored);
  if (byCombs) camera = byCombs.camera;
  const rails = railsSeen(picture, reducedMap(camera, photo, factor, mirrored), planned);
  if (rails) {
    trace?.(`rails ${rails.breadth.toFixed(1)} mm broad, ${rails.aside.toFixed(1)} mm aside`);
    camera = { ...camera, aimX: camera.aimX - rails.aside };
  }
  const expected: Expected = { ...planned, rail: rails?.breadth ?? planned.rail };
  let seen = framed(camera, fromFrame ? 3 : 7);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    camera = seen.camera;
    const wood = frameThings(seen.frame, expected, camera, photo, mirrored);
    const rails = wood.filter((thing) => thing.axis === 'x').length;
    const whole = rails >= 2 && wood.length - rails >= 2;
    let things: readonly StraightThing[] = wood;
    const fitTo = (strings: readonly StraightThing[], from: Camera) => {
      things = [...strings, ...wood];
      return fitPose(things, from, shape, prior, photo, mirrored);
    };
    const woodFit = fitTo([], camera);
    // The frame alone, where it is seen all round, says where strings can be; they then say it more finely.
    const known = whole ? woodFit.camera : camera;
    const settings = followSettings(expected, scaleOf(known, photo, mirrored, expected));
    let ends =
      round === 0 && !whole && byCombs
        ? byCombs.ends
        : measureStrings(photo, known, photo, mirrored, expected, settings);
    const believed = (part: 'upper' | 'lower', from: Camera, mostShift: number, among = ends) =>
      believedStrings(
        poseOf(cameraToVector(from), photo, mirrored),
        among,
        { part, bar: part === 'upper' ? expected.openingHeight : 0, mostShift, mostStretch: loose },
        scaleOf(from, photo, mirrored, expected),
      );
    let upper: ReadonlySet<number> = whole ? believed('upper', known, loose) : new Set(ends.map((end) => end.end));
    let stringsIn = photo;
    const shadeless = whole && upper.size < FOLLOWED * ends.length && withoutShadows(photo, known, expected, mirrored);
    if (shadeless) {
      const found = believed('upper', known, loose, shadeless.ends);
      if (found.size >= FOLLOWED * ends.length) {
        trace?.(`without shade ${found.size} strings are believed, with it ${upper.size}`);
        upper = found;
        stringsIn = shadeless.picture;
        ends = ends.map((end, i) => ({ ...end, upper: shadeless.ends[i]!.upper }));
      }
    }
    let fit = fitTo(stringThings(ends, expected, new Set(), upper), known);
    let lower: ReadonlySet<number> = rails >= 2 ? believed('lower', fit.camera, Math.min(0.5, loose)) : upper;
    if (lower.size < 4) lower = new Set();
    else fit = fitTo(stringThings(ends, expected, lower, upper), fit.camera);
    const before = supportOf(seen.frame);
    seen = framed(fit.camera, 2);
    const led = () => whole && supportOf(seen.frame) < 0.85 * before;
    if (led()) {
      // What was followed leads away from the frame. Near the bar it may still be string.
      trace?.(`strings led away: frame ${before.toFixed(2)} -> ${supportOf(seen.frame).toFixed(2)}`);
      lower = new Set();
      fit = fitTo(stringThings(ends, expected, lower, upper, FEET), known);
      seen = framed(fit.camera, 2);
    }
    if (led()) {
      trace?.(`strings disbelieved: frame ${before.toFixed(2)} -> ${supportOf(seen.frame).toFixed(2)}`);
      upper = new Set();
      fit = woodFit;
      things = wood;
      seen = framed(fit.camera, 2);
    }
    shape = fit.wood;
    const now: RefinedPose = {
      fit,
      things,
      ends,
      frame: seen.frame,
      frameSupport: supportOf(seen.frame) * plausible(fit, prior),
      upperUsed: upper.size >= 4,
      upperShare: upper.size / Math.max(1, ends.length),
      lowerShare: lower.size / Math.max(1, ends.length),
      lowerUsed: lower.size >= 4,
      stringsIn,
    };
    trace?.(
      `round ${round}: k1 ${fit.camera.k1.toFixed(4)} focal ${Math.exp(fit.camera.logFocal).toFixed(0)} chi ${fit.chi.toFixed(2)} rms ${fit.residualMm.toFixed(3)} shift ${seen.frame.shift.toFixed(2)} like ${seen.frame.likeness.toFixed(2)} wood ${shape.map((value) => value.toFixed(2))} upper ${upper.size} lower ${lower.size} frame ${now.frameSupport.toFixed(2)}: ${seen.frame.edges.map((edge) => `${edge.kind[0]}${edge.side[0]} ${edge.support.toFixed(2)}`).join(' ')}`,
    );
    // Later rounds are finer; one that loses the frame has gone astray.
    if (refined && now.frameSupport < 0.85 * refined.frameSupport) break;
    const moved = refined ? largestMove(refined.fit.camera, fit.camera, photo, mirrored, expected) : Infinity;
    refined = now;
    if (moved < SETTLED || (round >= ROUNDS - 1 && now.frameSupport < WORTH_MORE)) break;
    // What is so far from a frame does not become one.
    if (now.frameSupport < HOPELESS) break;
    const scale = scaleOf(fit.camera, photo, mirrored, expected);
    if (!(scale < MOST_DRIFT * startScale && scale > startScale / MOST_DRIFT)) {
      trace?.(`the camera ran away: ${scale.toFixed(2)} px/mm from ${startScale.toFixed(2)}`);
      return { ...refined, frameSupport: 0 };
    }
  }
  return refined!;
}
