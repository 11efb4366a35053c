import type { BarComb } from './barComb.ts';
import { type Camera, multiply, type PictureSize, rotationMatrix, rotationVector } from './camera.ts';
import { type CameraPrior, cameraFromSightings, notchX, plumbCamera, type Sighting } from './coarseCamera.ts';
import type { CoarseLoom } from './coarseLoom.ts';
import type { Expected } from './expected.ts';
import { enlargedCoordinate } from './reduce.ts';
import { toSource } from './turned.ts';

/** A first camera for one way up. */
export interface CoarsePose {
  readonly camera: Camera;
  /** Mean squared misfit in units of the coarse sigma. */
  readonly misfit: number;
  readonly sightings: readonly Sighting[];
}

const COARSE_SIGMA = 0.7;

/**
 * Ties the combs at both bars to notches and fits a camera, the loom's bottom bar taken for the one lower in the turned
 * picture. A comb may have lost or gained places at its ends, or be one of gaps instead of strings, so it may be out by
 * whole or half notches. Both combs out alike moves the loom sideways and is left to the rails; here only the skew
 * between them is varied.
 * @returns one for each skew, best fit first.
 */
export function coarsePoses(
  found: CoarseLoom,
  expected: Expected,
  factor: number,
  size: PictureSize,
  prior: CameraPrior,
  mirrored: boolean,
): CoarsePose[] {
  const { view, bars, lowerComb: bottom, upperComb: top } = found;
  const toPhoto = (x: number, y: number) => {
    const source = toSource(view.frame, x, y);
    return { x: enlargedCoordinate(source.x, factor), y: enlargedCoordinate(source.y, factor) };
  };
  const pxPerMm = view.scale((bars.upper.at + bars.lower.at) / 2) * factor;
  const middleX = (bars.upper.middle + bars.lower.middle) / 2;
  const middle = toPhoto(middleX, (bars.upper.at + bars.lower.at) / 2);
  const turn = Math.atan2(view.frame.sine, view.frame.cosine);
  const start = plumbCamera(expected, pxPerMm, turn, middle, size, prior);
  const places = (comb: BarComb) => comb.points[comb.points.length - 1]!.step + 1;
  const centred = (comb: BarComb) => (expected.ends - places(comb)) / 2;
  const reach = Math.min(6, 2 + Math.abs(places(top) - places(bottom)) / 2);
  const poses: CoarsePose[] = [];
  const topFirst = Math.round(centred(top));
  for (let skew = -reach; skew <= reach; skew += 0.5) {
    const bottomFirst = Math.round(2 * (centred(bottom) + skew)) / 2;
    const sightings = [
      ...combSightings(bottom, bottom.inside, -1, bottomFirst, expected, mirrored, toPhoto),
      ...combSightings(top, expected.openingHeight - top.inside, 1, topFirst, expected, mirrored, toPhoto),
    ];
    const fit = cameraFromSightings(sightings, start, prior, size, mirrored, COARSE_SIGMA * factor);
    poses.push({ camera: fit.camera, misfit: fit.cost / (2 * sightings.length), sightings });
  }
  return poses.sort((a, b) => a.misfit - b.misfit);
}

/** The same picture with the loom's other bar taken for the bottom: the loom turned half round about its middle. */
export function otherWayUp(pose: CoarsePose, expected: Expected): CoarsePose {
  return {
    camera: cameraOtherWayUp(pose.camera, expected),
    misfit: pose.misfit,
    sightings: pose.sightings.map((sighting) => ({
      ...sighting,
      x: -sighting.x,
      y: expected.openingHeight - sighting.y,
      bar: -sighting.bar as -1 | 0 | 1,
    })),
  };
}

/** The same view of the frame with the loom taken the other way up. */
export function cameraOtherWayUp(camera: Camera, expected: Expected): Camera {
  const turned = multiply(rotationMatrix(camera.turn), [-1, 0, 0, 0, -1, 0, 0, 0, 1]);
  return {
    ...camera,
    turn: rotationVector(turned),
    aimX: -camera.aimX,
    aimY: expected.openingHeight - camera.aimY,
  };
}

/** Enough places of a comb to fit a camera to. */
const PLACES = 24;

function combSightings(
  comb: BarComb,
  y: number,
  bar: -1 | 1,
  first: number,
  expected: Expected,
  reversed: boolean,
  toPhoto: (x: number, y: number) => { x: number; y: number },
): Sighting[] {
  const last = comb.points[comb.points.length - 1]!.step;
  const every = Math.max(1, Math.floor(comb.points.length / PLACES));
  return comb.points
    .filter((_, k) => k % every === 0)
    .map((point) => {
      const end = first + (reversed ? last - point.step : point.step);
      const seen = toPhoto(point.x, point.y);
      return { x: notchX(expected, expected.firstNotch + end), y, bar, px: seen.x, py: seen.y };
    });
}
