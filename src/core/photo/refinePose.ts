import { type Camera, cameraToVector } from './camera.ts';
import { BAR_ROUNDING, type CameraPrior, OUTER_ROUNDING } from './coarseCamera.ts';
import type { Expected } from './expected.ts';
import { mapOf } from './firstLook.ts';
import { type FrameEdges, frameEdges } from './frameEdges.ts';
import { believedLower } from './judgeLower.ts';
import { frameThings, loosePlace, stringThings } from './knownThings.ts';
import { type FollowedEnd, followSettings, measureStrings } from './measureStrings.ts';
import { fitPose, type PoseFit, poseOf, type StraightThing } from './poseFit.ts';
import type { Photo } from './raster.ts';
import { type ColourRaster, reducedCoordinate } from './reduce.ts';

/** The loom as finely as the picture gives it. */
export interface RefinedPose {
  readonly fit: PoseFit;
  readonly ends: readonly FollowedEnd[];
  readonly frame: FrameEdges;
  /** Share of the frame's edges that are truly there, 0–1. */
  readonly frameSupport: number;
  /** How far, mm, the rails lie aside of where the comb's notches put them, left and right taken together; null unseen. */
  readonly railsAside: number | null;
  /** Whether the strings' lower parts took part. */
  readonly lowerUsed: boolean;
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
/** Rails stand lower than the strings, which moves both alike outward or inward; what moves both to one side is the comb. */
function railsAside(wood: readonly StraightThing[], fit: PoseFit, strings: number): number | null {
  const offset = (name: string) => {
    const at = wood.findIndex((thing) => thing.name === name);
    return at < 0 ? null : fit.things[strings + at]!.offset;
  };
  for (const kind of ['outer', 'inner']) {
    const left = offset(`${kind} left`);
    const right = offset(`${kind} right`);
    if (left !== null && right !== null) return (left + right) / 2;
  }
  return null;
}

/** 1 for a rounding of the wood's edges as wood has it, falling to 0 where no wood is rounded so. */
function plausible([inner, outer]: readonly [number, number]): number {
  const off = Math.max(
    Math.abs(inner - BAR_ROUNDING.mm) / BAR_ROUNDING.sigma,
    Math.abs(outer - OUTER_ROUNDING.mm) / OUTER_ROUNDING.sigma,
  );
  return Math.max(0, Math.min(1, (5 - off) / 2.5));
}

const ROUNDS = 3;

/**
 * Follows strings and frame edges in the full photograph and fits camera and lens to them, a few times over, as each
 * better camera tells better what is string and what is edge.
 * @param picture a reduced copy, by `factor`, for the frame's edges.
 */
export function refinePose(
  photo: Photo,
  picture: ColourRaster,
  factor: number,
  start: Camera,
  expected: Expected,
  prior: CameraPrior,
  mirrored: boolean,
  trace?: (line: string) => void,
): RefinedPose {
  let camera = start;
  let rounding: readonly [number, number] = [BAR_ROUNDING.mm, OUTER_ROUNDING.mm];
  let refined: RefinedPose | null = null;
  let lost = false;
  const startScale = scaleOf(start, photo, mirrored, expected);
  for (let round = 0; round < ROUNDS; round++) {
    const settings = followSettings(expected, scaleOf(camera, photo, mirrored, expected));
    const ends = measureStrings(photo, camera, photo, mirrored, expected, settings);
    if (round === 0) {
      // The first camera may be some millimetres out: strings alone bring it near enough to tell edges apart.
      const place = loosePlace(camera, photo, mirrored, expected);
      const moved = fitPose(
        [...stringThings(ends, expected, new Set()), ...place],
        camera,
        rounding,
        prior,
        photo,
        mirrored,
      ).camera;
      // Few or false strings can throw the camera off; the first one is the better guess then.
      if (largestMove(camera, moved, photo, mirrored, expected) < 2 * expected.pitch) camera = moved;
    }
    const toPhoto = mapOf(camera, photo, mirrored);
    const toSmall = (x: number, y: number, z?: number) => {
      const seen = toPhoto(x, y, z);
      return { x: reducedCoordinate(seen.x, factor), y: reducedCoordinate(seen.y, factor) };
    };
    const frame = frameEdges(picture, factor, toSmall, expected, round === 0 ? 7 : 2);
    camera = { ...camera, aimY: camera.aimY + frame.shift };
    const wood = frameThings(frame, expected, camera, photo, mirrored);
    const upper = stringThings(ends, expected, new Set());
    let fit = fitPose([...upper, ...wood], camera, rounding, prior, photo, mirrored);
    const rails = wood.filter((thing) => thing.axis === 'x').length;
    const all = new Set(ends.map((end) => end.end));
    const lower =
      rails >= 2
        ? believedLower(
            poseOf(cameraToVector(fit.camera), photo, mirrored),
            ends,
            expected.pitch,
            scaleOf(fit.camera, photo, mirrored, expected),
          )
        : all;
    if (lower.size >= 4) {
      fit = fitPose([...stringThings(ends, expected, lower), ...wood], fit.camera, rounding, prior, photo, mirrored);
    }
    camera = fit.camera;
    rounding = fit.rounding;
    const now: RefinedPose = {
      fit,
      ends,
      frame,
      frameSupport: supportOf(frame) * plausible(rounding),
      railsAside: railsAside(wood, fit, lower.size >= 4 ? stringThings(ends, expected, lower).length : upper.length),
      lowerUsed: lower.size >= 4,
    };
    // Later rounds are finer; one that loses the frame has gone astray.
    if (!refined || now.frameSupport > 0.85 * refined.frameSupport) refined = now;
    else lost = true;
    trace?.(
      `round ${round}: k1 ${camera.k1.toFixed(4)} focal ${Math.exp(camera.logFocal).toFixed(0)} chi ${fit.chi.toFixed(2)} rms ${fit.residualMm.toFixed(3)} shift ${frame.shift.toFixed(2)} like ${frame.likeness.toFixed(2)} rounding ${rounding.map((value) => value.toFixed(2))} aside ${now.railsAside?.toFixed(2)} lower ${lower.size} frame ${now.frameSupport.toFixed(2)}: ${frame.edges.map((edge) => `${edge.kind[0]}${edge.side[0]} ${edge.support.toFixed(2)}`).join(' ')}`,
    );
    if (lost) break;
    const scale = scaleOf(camera, photo, mirrored, expected);
    if (!(scale < MOST_DRIFT * startScale && scale > startScale / MOST_DRIFT)) {
      trace?.(`the camera ran away: ${scale.toFixed(2)} px/mm from ${startScale.toFixed(2)}`);
      return { ...refined, frameSupport: 0 };
    }
  }
  return refined!;
}
