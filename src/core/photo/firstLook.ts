import { brightness } from './blend.ts';
import { type Camera, cameraProjection, lensOf, type PictureSize, projectPoint } from './camera.ts';
import { type CameraPrior, cameraFromSightings } from './coarseCamera.ts';
import { bandViews, type CoarseLoom, coarseLoom, type Expected } from './coarseLoom.ts';
import { type CoarsePose, coarsePose } from './coarsePose.ts';
import type { Photo } from './raster.ts';
import { type ColourRaster, reducedCoordinate } from './reduce.ts';
import { seatsBeside } from './seatCombs.ts';
import { settleNotches } from './settleNotches.ts';
import { baseEvidence } from './uprightness.ts';

/** A first idea of where the loom is, with what speaks for it. */
export interface FirstLook {
  readonly coarse: CoarseLoom;
  readonly bottomIsLower: boolean;
  readonly camera: Camera;
  /** Support of bars (0–4.4), of the rails (0–3). */
  readonly bars: number;
  readonly rails: number;
  readonly misfit: number;
  /** Share of the ends' places near the top bar that hold a string, and the same half a pitch aside. */
  readonly strings: number;
  readonly between: number;
  /** Colour change at the plan's base line, and at its mirror image, grey levels. */
  readonly base: number;
  readonly baseMirrored: number;
  readonly score: number;
}

/** Photo px of a loom point under a camera. */
export const mapOf = (
  camera: Camera,
  size: PictureSize,
  mirrored: boolean,
): ((x: number, y: number, z?: number) => { x: number; y: number }) => {
  const projection = cameraProjection(camera, size, mirrored);
  const lens = lensOf(camera, size);
  return (x, y, z = 0) => projectPoint(projection, lens, x, y, z);
};

/** A first look this good needs no other beside it: both bars, rails, strings and base all speak for it. */
const DECISIVE = 8;

/** All first ideas, best first. */
export function firstLooks(
  photo: Photo,
  picture: ColourRaster,
  factor: number,
  expected: Expected,
  prior: CameraPrior,
  mirrored: boolean,
): FirstLook[] {
  const looks: FirstLook[] = [];
  const sigma = 0.7 * factor;
  for (const view of bandViews(picture, brightness, expected).slice(0, 4)) {
    if (looks.some((look) => look.score > DECISIVE)) break;
    const coarse = coarseLoom(picture, view, expected);
    if (!coarse) continue;
    const both: (Omit<FirstLook, 'base' | 'baseMirrored' | 'score'> & { evidence: number })[] = [];
    for (const bottomIsLower of [true, false]) {
      const candidates = coarsePose(coarse, expected, factor, photo, prior, bottomIsLower, mirrored);
      const settle = (from: readonly CoarsePose[]) =>
        settleNotches(from, picture, factor, expected, prior, photo, mirrored, sigma);
      let settled = settle(candidates);
      if (!settled) continue;
      let seats = seatsBeside(photo, mapOf(settled.camera, photo, mirrored), expected);
      if (seats.top !== 0 || seats.bottom !== 0) {
        const { top, bottom } = seats;
        const sightings = settled.sightings.map((sighting) => ({
          ...sighting,
          x: sighting.x - expected.pitch * (sighting.bar > 0 ? top : bottom),
        }));
        // A comb half a pitch aside may belong to the notch on either side of it.
        const tied = [0, 1, -1].map((extra) => {
          const moved = sightings.map((sighting) =>
            sighting.bar < 0 ? { ...sighting, x: sighting.x + extra * expected.pitch } : sighting,
          );
          const fit = cameraFromSightings(moved, settled!.camera, prior, photo, mirrored, sigma);
          return { camera: fit.camera, misfit: fit.cost / (2 * moved.length), sightings: moved };
        });
        settled = settle(tied.sort((a, b) => a.misfit - b.misfit)) ?? settled;
        seats = seatsBeside(photo, mapOf(settled.camera, photo, mirrored), expected);
      }
      const toPhoto = mapOf(settled.camera, photo, mirrored);
      const toSmall = (x: number, y: number) => {
        const seen = toPhoto(x, y);
        return { x: reducedCoordinate(seen.x, factor), y: reducedCoordinate(seen.y, factor) };
      };
      both.push({
        coarse,
        bottomIsLower,
        camera: settled.camera,
        bars: coarse.bars.score,
        rails: settled.rails,
        misfit: settled.misfit,
        strings: seats.evidence,
        between: seats.between,
        evidence: baseEvidence(picture, toSmall, expected),
      });
    }
    for (const one of both) {
      const other = both.find((look) => look !== one);
      const baseMirrored = other?.evidence ?? 0;
      const upright = (one.evidence - baseMirrored) / (one.evidence + baseMirrored + 10);
      looks.push({
        ...one,
        base: one.evidence,
        baseMirrored,
        score: one.bars + one.rails - 0.5 * Math.log(1 + one.misfit) + 4 * (one.strings - one.between) + 1.5 * upright,
      });
    }
  }
  return looks.sort((a, b) => b.score - a.score);
}
