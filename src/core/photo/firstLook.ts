import type { BandView } from './bandView.ts';
import { brightness, redAgainstGreen, yellowAgainstBlue } from './blend.ts';
import { type Camera, cameraProjection, lensOf, type PictureSize, projectPoint } from './camera.ts';
import { type CameraPrior, cameraFromSightings } from './coarseCamera.ts';
import { type CoarseLoom, coarseLoom } from './coarseLoom.ts';
import { type CoarsePose, coarsePoses, otherWayUp } from './coarsePose.ts';
import type { Expected } from './expected.ts';
import type { Photo } from './raster.ts';
import { reducedCoordinate } from './reduce.ts';
import { seatsBeside } from './seatCombs.ts';
import { settleNotches } from './settleNotches.ts';
import type { StringBands } from './stringBands.ts';
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

/** Bands of strings by brightness, then, only if they are asked for, by colour: strings may differ from the table in hue alone. */
function* viewsInTurn({ by }: StringBands): Generator<BandView> {
  for (const blend of [brightness, yellowAgainstBlue, redAgainstGreen]) {
    yield* by(blend).slice(0, 3);
  }
}

/** All first ideas, best first. */
export function firstLooks(
  photo: Photo,
  bands: StringBands,
  expected: Expected,
  prior: CameraPrior,
  mirrored: boolean,
): FirstLook[] {
  const looks: FirstLook[] = [];
  const { source, factor } = bands;
  const { picture } = source;
  const sigma = 0.7 * factor;
  for (const view of viewsInTurn(bands)) {
    if (looks.some((look) => look.score > DECISIVE && look.rails > 2)) break;
    const coarse = coarseLoom(source, view, expected);
    if (!coarse) continue;
    const both: (Omit<FirstLook, 'base' | 'baseMirrored' | 'score'> & { evidence: number })[] = [];
    const settle = (from: readonly CoarsePose[], halves: boolean) =>
      settleNotches(from, picture, factor, expected, prior, photo, mirrored, sigma, halves);
    const first = settle(coarsePoses(coarse, expected, factor, photo, prior, mirrored), true);
    if (!first) continue;
    for (const bottomIsLower of [true, false]) {
      let settled = bottomIsLower ? first : { ...otherWayUp(first, expected), rails: first.rails };
      let seats = seatsBeside(photo, mapOf(settled.camera, photo, mirrored), expected);
      if (seats.top !== 0 || seats.bottom !== 0) {
        const { top, bottom } = seats;
        const from = settled;
        // A comb half a pitch aside may belong to the notch on either side of it.
        const tied = [0, 1, -1].map((extra) => {
          const sightings = from.sightings.map((sighting) => ({
            ...sighting,
            x: sighting.x - expected.pitch * (sighting.bar > 0 ? top : bottom + extra),
          }));
          const fit = cameraFromSightings(sightings, from.camera, prior, photo, mirrored, sigma);
          return { camera: fit.camera, misfit: fit.cost / (2 * sightings.length), sightings };
        });
        settled = settle(
          tied.sort((a, b) => a.misfit - b.misfit),
          false,
        )!;
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
