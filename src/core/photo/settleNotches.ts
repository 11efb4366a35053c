import { type Camera, cameraProjection, lensOf, type PictureSize, projectPoint } from './camera.ts';
import { type CameraPrior, cameraFromSightings, notchX, type Sighting } from './coarseCamera.ts';
import type { CoarsePose } from './coarsePose.ts';
import type { Expected } from './expected.ts';
import { notchShift, railProfile } from './railEdges.ts';
import { type ColourRaster, reducedCoordinate } from './reduce.ts';

/** A first camera whose comb is tied to the notches the rails speak for. */
export interface SettledPose {
  readonly camera: Camera;
  readonly misfit: number;
  /** Support of the frame's upright edges, 0–3. */
  readonly rails: number;
  readonly sightings: readonly Sighting[];
}

/** Among poses that differ by whole notches, takes the one whose rails stand where they should. */
export function settleNotches(
  candidates: readonly CoarsePose[],
  picture: ColourRaster,
  factor: number,
  expected: Expected,
  prior: CameraPrior,
  size: PictureSize,
  mirrored: boolean,
  sigma: number,
  halves: boolean,
): SettledPose | null {
  let best: (SettledPose & { score: number }) | null = null;
  const leastMisfit = candidates[0]?.misfit ?? 0;
  for (const candidate of candidates.slice(0, 6)) {
    if (candidate.misfit > 20 * leastMisfit + 0.5) continue;
    const projection = cameraProjection(candidate.camera, size, mirrored);
    const lens = lensOf(candidate.camera, size);
    const profile = railProfile(
      picture,
      (x, y) => {
        const seen = projectPoint(projection, lens, x, y, -1.5);
        return { x: reducedCoordinate(seen.x, factor), y: reducedCoordinate(seen.y, factor) };
      },
      expected,
      notchX(expected, expected.firstNotch - 2),
      notchX(expected, expected.firstNotch + expected.ends + 1),
    );
    const { shift, support } = notchShift(profile, expected, 8, halves);
    const score = support - 0.2 * Math.log((candidate.misfit + 0.02) / (leastMisfit + 0.02));
    if (best && score <= best.score) continue;
    const moved = candidate.sightings.map((sighting) => ({ ...sighting, x: sighting.x + shift * expected.pitch }));
    const camera =
      shift === 0
        ? candidate.camera
        : cameraFromSightings(moved, candidate.camera, prior, size, mirrored, sigma).camera;
    best = { camera, misfit: candidate.misfit, rails: support, sightings: moved, score };
  }
  return best;
}
