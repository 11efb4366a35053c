import type { BarComb } from './barComb.ts';
import type { Camera, PictureSize } from './camera.ts';
import { type CameraPrior, cameraFromSightings, notchX, plumbCamera, type Sighting } from './coarseCamera.ts';
import type { CoarseLoom, Expected } from './coarseLoom.ts';
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
 * Ties the combs at both bars to the notches and fits a camera. The comb at a bar may have lost or gained a place at
 * its ends, so a few shifts are tried; a wrong one skews the loom and fits badly.
 * @returns one for each skew, best fit first.
 * @param bottomIsLower whether the loom's bottom bar is the one lower in the turned picture.
 */
export function coarsePose(
  found: CoarseLoom,
  expected: Expected,
  factor: number,
  size: PictureSize,
  prior: CameraPrior,
  bottomIsLower: boolean,
  mirrored: boolean,
): CoarsePose[] {
  const { view, bars } = found;
  const bottom = bottomIsLower ? found.lowerComb : found.upperComb;
  const top = bottomIsLower ? found.upperComb : found.lowerComb;
  // Seen the right way up x runs to the right; upside down or mirrored it runs to the left.
  const reversed = bottomIsLower === mirrored;
  const toPhoto = (x: number, y: number) => {
    const source = toSource(view.frame, x, y);
    return { x: enlargedCoordinate(source.x, factor), y: enlargedCoordinate(source.y, factor) };
  };
  const pxPerMm = view.scale((bars.upper.at + bars.lower.at) / 2) * factor;
  const middleX = (bars.upper.middle + bars.lower.middle) / 2;
  const middle = toPhoto(middleX, (bars.upper.at + bars.lower.at) / 2);
  const turn = Math.atan2(view.frame.sine, view.frame.cosine) + (bottomIsLower ? 0 : Math.PI);
  const start = plumbCamera(expected, pxPerMm, turn, middle, size, prior);
  const sigma = COARSE_SIGMA * factor;
  // Shifting both combs alike moves the loom sideways and fits as well: one of each kind is enough here.
  const bySkew = new Map<number, CoarsePose>();
  for (const bottomFirst of shifts(bottom, expected)) {
    for (const topFirst of shifts(top, expected)) {
      const sightings = [
        ...combSightings(bottom, bottom.inside, -1, bottomFirst, expected, reversed, toPhoto),
        ...combSightings(top, expected.openingHeight - top.inside, 1, topFirst, expected, reversed, toPhoto),
      ];
      if (sightings.length < 12) continue;
      const fit = cameraFromSightings(sightings, start, prior, size, mirrored, sigma);
      // Ends left over outside the plan count against a shift as much as a bad fit does.
      const lost = bottom.points.length + top.points.length - sightings.length;
      const misfit = (fit.cost + 2 * lost) / (2 * sightings.length);
      const known = bySkew.get(topFirst - bottomFirst);
      if (!known || misfit < known.misfit) {
        bySkew.set(topFirst - bottomFirst, { camera: fit.camera, misfit, sightings });
      }
    }
  }
  return [...bySkew.values()].sort((a, b) => a.misfit - b.misfit);
}

function shifts(comb: BarComb, expected: Expected): number[] {
  const places = comb.points[comb.points.length - 1]!.step + 1;
  const centred = Math.round((expected.ends - places) / 2);
  const reach = Math.min(6, Math.max(1, Math.ceil(Math.abs(places - expected.ends) / 2) + 1));
  const out: number[] = [];
  for (let k = -reach; k <= reach; k++) out.push(centred + k);
  return out;
}

function combSightings(
  comb: BarComb,
  y: number,
  bar: -1 | 1,
  first: number,
  expected: Expected,
  reversed: boolean,
  toPhoto: (x: number, y: number) => { x: number; y: number },
): Sighting[] {
  const out: Sighting[] = [];
  const last = comb.points[comb.points.length - 1]!.step;
  for (const point of comb.points) {
    const end = first + (reversed ? last - point.step : point.step);
    if (end < 0 || end >= expected.ends) continue;
    const seen = toPhoto(point.x, point.y);
    out.push({ x: notchX(expected, expected.firstNotch + end), y, bar, px: seen.x, py: seen.y });
  }
  return out;
}
