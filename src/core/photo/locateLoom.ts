import type { ReasonCode } from '../model/check.ts';
import { measurement } from '../model/measurement.ts';
import { failure, type Outcome, success } from '../model/outcome.ts';
import type { Piece } from '../model/piece.ts';
import { type Camera, cameraSteps, cameraToVector } from './camera.ts';
import { BAR_ROUNDING, OUTER_ROUNDING, usualCamera } from './coarseCamera.ts';
import type { Expected } from './coarseLoom.ts';
import { expectedOf } from './expected.ts';
import { type FirstLook, firstLooks, mapOf } from './firstLook.ts';
import { type FrameEdges, frameEdges } from './frameEdges.ts';
import type { LocatedLoom, LoomPose, StringTrack } from './loomPose.ts';
import { toLoom } from './loomPose.ts';
import { type FollowedEnd, followSettings, lookSigma, measureStrings } from './measureStrings.ts';
import { fitPose, type PoseFit, poseOf, type StraightThing } from './poseFit.ts';
import type { Photo } from './raster.ts';
import { type ColourRaster, firstLookReduction, reducedCoordinate, reducePhoto, reductionFor } from './reduce.ts';

export interface LocateOptions {
  readonly mirrored?: boolean;
  /** A line of inner figures for a maintainer. */
  readonly trace?: (line: string) => void;
  readonly onStage?: (name: string, done: number, of: number) => void;
}

/** px per mm in the middle of the loom. */
function scaleOf(camera: Camera, photo: Photo, mirrored: boolean, expected: Expected): number {
  const map = mapOf(camera, photo, mirrored);
  const y = expected.openingHeight / 2;
  const a = map(-10, y);
  const b = map(10, y);
  return Math.hypot(b.x - a.x, b.y - a.y) / 20;
}

/** How far down a rounded outer edge its outline lies, mm (edges are rounded by about a millimetre: value from memory). */
const EDGE_ROUND = 1.2;

/** The wood's edges as straight things: bars tell y, rails only that the lens bends straight edges. */
function frameThings(
  { edges }: FrameEdges,
  expected: Expected,
  camera: Camera,
  photo: Photo,
  mirrored: boolean,
): StraightThing[] {
  const map = mapOf(camera, photo, mirrored);
  const flat = poseOf(cameraToVector(camera), photo, mirrored);
  const half = expected.openingWidth / 2;
  const height = expected.openingHeight;
  const things: StraightThing[] = [];
  for (const { side, kind, points, support } of edges) {
    const bar = side === 'bottom' || side === 'top';
    const outer = kind === 'outer';
    if (support < (bar ? 0.25 : 0.5) || points.length < 20) continue;
    const out = side === 'bottom' || side === 'left' ? -1 : 1;
    const inner = side === 'bottom' ? 0 : side === 'top' ? height : out * half;
    const value = inner + (outer ? out * expected.bar : 0);
    // The edge lies below the strings' plane, so it is seen nearer the middle than it is; more so where the view is slanted.
    const depth = expected.stringDiameter / 2 + (outer ? EDGE_ROUND : 0);
    const seen = map(bar ? 0 : value, bar ? value : height / 2, -depth);
    const apparent = toLoom(flat, seen.x, seen.y);
    things.push({
      name: `${kind} ${side}`,
      axis: bar ? 'y' : 'x',
      value: bar ? apparent.y : apparent.x,
      anchor: bar ? 0 : height / 2,
      inset: bar ? [outer ? 0 : out, outer ? -out : 0] : [0, 0],
      points: points.map((point) => ({ ...point, sigma: 0.5 })),
      // Teeth and shade make the inner edge an unsure one; rails stand lower than the bars, by how much isn't known.
      offsetSigma: bar ? (outer ? 0.2 : 0.5) : 3,
      slopeSigma: bar ? 0.002 : 0.003,
      bowSigma: outer ? 0.2 : 0.6,
      bowStart: bar ? -half : 0,
      bowEnd: bar ? half : height,
    });
  }
  return things;
}

function stringThings(ends: readonly FollowedEnd[], expected: Expected, doubted: ReadonlySet<string>): StraightThing[] {
  const things: StraightThing[] = [];
  for (const { end, notch, upper, lower } of ends) {
    const points = (samples: FollowedEnd['upper']) =>
      samples.map((sample) => ({ px: sample.px, py: sample.py, sigma: lookSigma(sample) }));
    if (upper.length >= 6) {
      things.push({
        name: `upper ${end}`,
        axis: 'x',
        value: notch,
        anchor: expected.openingHeight,
        inset: [0, 0],
        points: points(upper),
        offsetSigma: doubted.has(`upper ${end}`) ? 1 : 0.12,
        slopeSigma: 0.2,
        bowSigma: 0.2,
        bowStart: expected.openingHeight,
        bowEnd: upper[upper.length - 1]!.y,
      });
    }
    if (lower.length >= 4) {
      things.push({
        name: `lower ${end}`,
        axis: 'x',
        value: notch,
        anchor: 0,
        inset: [0, 0],
        points: points(lower),
        offsetSigma: doubted.has(`lower ${end}`) ? 1 : 0.12,
        slopeSigma: 0.2,
        bowSigma: 0,
        bowStart: 0,
        bowEnd: 1,
      });
    }
  }
  return things;
}

/** Inner figures of a fit, for a maintainer. */
function figuresOf(name: string, fit: PoseFit, things: readonly StraightThing[]): string {
  const { camera } = fit;
  const worst = fit.things
    .map((thing, k) => ({ ...thing, name: things[k]?.name ?? '' }))
    .sort((a, b) => b.rms - a.rms)
    .slice(0, 3)
    .map((thing) => `${thing.name} ${thing.rms.toFixed(2)}`);
  return `${name}: k1 ${camera.k1.toFixed(4)} focal ${Math.exp(camera.logFocal).toFixed(0)} chi ${fit.chi.toFixed(2)} rms ${fit.residualMm.toFixed(3)} turn ${camera.turn.map((t) => t.toFixed(3))} things ${things.length} points ${things.reduce((sum, thing) => sum + thing.points.length, 0)} worst ${worst.join(', ')}`;
}

/** Finds the loom in a photograph and ties it to millimetres. */
export function locateLoom(photo: Photo, piece: Piece, options: LocateOptions = {}): Outcome<LocatedLoom, ReasonCode> {
  const expected = expectedOf(piece);
  const mirrored = options.mirrored ?? false;
  const prior = usualCamera(photo);
  const factor = reductionFor(photo, 1500);
  const picture = reducePhoto(photo, factor);
  const quick = firstLookReduction(photo, expected.openingHeight + 2 * expected.bar, expected.pitch);
  const small = quick === factor ? picture : reducePhoto(photo, quick);
  const looks = firstLooks(photo, small, quick, expected, prior, mirrored);
  for (const one of looks) {
    options.trace?.(
      `${one.coarse.view.polarity} ${((one.coarse.view.angle * 180) / Math.PI).toFixed(0)}° ${one.bottomIsLower} score ${one.score.toFixed(2)} bars ${one.bars.toFixed(2)} rails ${one.rails.toFixed(2)} misfit ${one.misfit.toFixed(2)} strings ${one.strings.toFixed(2)}/${one.between.toFixed(2)} base ${one.base.toFixed(0)}/${one.baseMirrored.toFixed(0)} combs ${one.coarse.upperComb.points.length} ${one.coarse.lowerComb.points.length}`,
    );
  }
  const look = looks[0];
  if (!look) {
    return failure(
      'no-loom',
      'No loom was found in the picture.',
      'Take it from straight above with the whole frame in view, or click the four corners.',
    );
  }
  return success(refine(photo, picture, look, expected, prior, factor, mirrored, options.trace));
}

/** Strings that don't meet their notch or wander: shade or cardboard was followed instead. They get little say. */
function doubtful(fit: PoseFit, strings: readonly StraightThing[]): ReadonlySet<string> {
  const own = fit.things.slice(0, strings.length);
  const spread = own.map((thing) => thing.rms).sort((a, b) => a - b);
  const usual = spread[Math.floor(0.4 * spread.length)] ?? 0;
  return new Set(
    strings
      .filter((_, k) => Math.abs(own[k]!.offset) > 0.25 || own[k]!.rms > 3 * usual + 0.04 || own[k]!.kept < 0.7)
      .map((thing) => thing.name),
  );
}

/** Holds a camera's y in place while strings alone move it. */
function looseBars(camera: Camera, photo: Photo, mirrored: boolean, expected: Expected): StraightThing[] {
  const map = mapOf(camera, photo, mirrored);
  return [0, expected.openingHeight].map((value) => ({
    name: 'place',
    axis: 'y',
    value,
    anchor: 0,
    inset: [0, 0],
    points: [-100, 0, 100].map((x) => {
      const seen = map(x, value);
      return { px: seen.x, py: seen.y, sigma: 4 };
    }),
    offsetSigma: 0,
    slopeSigma: 0,
    bowSigma: 0,
    bowStart: 0,
    bowEnd: 1,
  }));
}

function refine(
  photo: Photo,
  picture: ColourRaster,
  look: FirstLook,
  expected: Expected,
  prior: ReturnType<typeof usualCamera>,
  factor: number,
  mirrored: boolean,
  trace: LocateOptions['trace'],
): LocatedLoom {
  let camera = look.camera;
  let ends: FollowedEnd[] = [];
  let fit: PoseFit | null = null;
  let doubted: ReadonlySet<string> = new Set();
  for (let round = 0; round < 3; round++) {
    const settings = followSettings(expected, scaleOf(camera, photo, mirrored, expected));
    ends = measureStrings(photo, camera, photo, mirrored, expected, settings);
    const strings = stringThings(ends, expected, doubted);
    if (round === 0) {
      // The first camera may be some millimetres out: strings alone bring it near enough to tell the frame's edges apart.
      const alone = fitPose(
        [...strings, ...looseBars(camera, photo, mirrored, expected)],
        camera,
        [BAR_ROUNDING.mm, OUTER_ROUNDING.mm],
        prior,
        photo,
        mirrored,
      );
      camera = alone.camera;
      trace?.(figuresOf('strings alone', alone, strings));
    }
    const toPhoto = mapOf(camera, photo, mirrored);
    const edges = frameEdges(
      picture,
      factor,
      (x, y, z) => {
        const seen = toPhoto(x, y, z);
        return { x: reducedCoordinate(seen.x, factor), y: reducedCoordinate(seen.y, factor) };
      },
      expected,
      round === 0 ? 7 : 2,
    );
    camera = { ...camera, aimY: camera.aimY + edges.shift };
    fit = fitPose(
      [...strings, ...frameThings(edges, expected, camera, photo, mirrored)],
      camera,
      fit?.rounding ?? [BAR_ROUNDING.mm, OUTER_ROUNDING.mm],
      prior,
      photo,
      mirrored,
    );
    camera = fit.camera;
    doubted = doubtful(fit, strings);
    const named = frameThings(edges, expected, camera, photo, mirrored);
    if (round === 2)
      fit.things.slice(0, strings.length).forEach((thing, k) => {
        trace?.(
          `  ${strings[k]?.name} offset ${thing.offset.toFixed(2)} slope ${thing.slope.toFixed(4)} bow ${thing.bow.toFixed(2)} rms ${thing.rms.toFixed(2)} kept ${thing.kept.toFixed(2)} n ${strings[k]?.points.length}`,
        );
      });
    fit.things.slice(strings.length).forEach((thing, k) => {
      trace?.(
        `  ${named[k]?.name} offset ${thing.offset.toFixed(2)} slope ${thing.slope.toFixed(4)} bow ${thing.bow.toFixed(2)} rms ${thing.rms.toFixed(2)} kept ${thing.kept.toFixed(2)}`,
      );
    });
    trace?.(
      `shift ${edges.shift.toFixed(2)} like ${edges.likeness.toFixed(2)} rounding ${fit.rounding.map((r) => r.toFixed(2))} ${edges.edges.map((e) => `${e.kind[0]}${e.side[0]} ${e.support.toFixed(2)}`).join(' ')}`,
    );
  }
  return assembled(photo, fit!, ends, expected, mirrored);
}

function assembled(
  photo: Photo,
  fit: PoseFit,
  ends: readonly FollowedEnd[],
  expected: Expected,
  mirrored: boolean,
): LocatedLoom {
  const vector = cameraToVector(fit.camera);
  const { homography, lens } = poseOf(vector, photo, mirrored);
  const covariance = fit.covariance;
  const sharedSigma = (x: number, y: number) => {
    const map = mapOf(fit.camera, photo, mirrored);
    const seen = map(x, y);
    const gradient = cameraSteps.map((step, i) => {
      const moved = vector.slice();
      moved[i]! += step;
      const place = toLoom(poseOf(moved, photo, mirrored), seen.x, seen.y);
      return { x: (place.x - x) / step, y: (place.y - y) / step };
    });
    let xx = 0;
    let yy = 0;
    for (let i = 0; i < 9; i++) {
      for (let j = 0; j < 9; j++) {
        xx += gradient[i]!.x * covariance[i * 11 + j]! * gradient[j]!.x;
        yy += gradient[i]!.y * covariance[i * 11 + j]! * gradient[j]!.y;
      }
    }
    return { x: Math.sqrt(Math.max(0, xx)), y: Math.sqrt(Math.max(0, yy)) };
  };
  const pose: LoomPose = {
    homography,
    lens,
    sharedSigma,
    reference: {
      method: 'opening-and-notches',
      parts: ['notch pitch at the top bar', 'notch pitch at the bottom bar', 'opening'],
      mmPerPx: 1 / scaleOf(fit.camera, photo, mirrored, expected),
      residualMm: fit.residualMm,
      lensK1: lens.k1,
      lensK2: lens.k2,
      homography: [...homography],
      photoWidth: photo.width,
      photoHeight: photo.height,
      scaleSigma: sharedSigma(0, expected.openingHeight).y / expected.openingHeight,
      baseSigmaMm: sharedSigma(0, expected.base).y,
    },
  };
  const tracks: StringTrack[] = ends.map((end) => ({
    end: end.end,
    why: end.upper.length > 4 ? null : 'not seen above the cloth',
    notchX: end.upper.length > 4 ? measurement(end.notch, 0.15, end.upper.length, 'string at the top bar') : null,
    bare: end.upper
      .map((sample) => ({ ...toLoom(pose, sample.px, sample.py), sigma: lookSigma(sample) }))
      .sort((a, b) => a.y - b.y),
  }));
  return { pose, endsCounted: tracks.filter((track) => track.why === null).length, tracks };
}
