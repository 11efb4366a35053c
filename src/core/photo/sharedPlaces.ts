import type { Camera, PictureSize } from './camera.ts';
import { cameraToVector } from './camera.ts';
import { type CellShift, cellShifts } from './cellShift.ts';
import type { CameraPrior } from './coarseCamera.ts';
import { usualWood } from './coarseCamera.ts';
import { placesEvidence, type SharedPlace } from './earlierEvidence.ts';
import type { EarlierLoom } from './earlierLoom.ts';
import type { Expected } from './expected.ts';
import { mapOf } from './firstLook.ts';
import { type FlatGrid, type FlatLoom, flatGrid, flattenLoom, lightPicture, localContrast } from './flatLoom.ts';
import { cellZones, faceHeight, type LoomCell, withinCells, zoneAt } from './loomCells.ts';
import { fitPose, type PoseFit } from './poseFit.ts';
import type { Photo } from './raster.ts';
import { scaleOf } from './refinePose.ts';

/** What was found of the earlier photograph in the new one, and the camera that explains it. */
export interface SharedLook {
  readonly fit: PoseFit;
  /** Places that agree, and how many were told at all. */
  readonly places: readonly SharedPlace[];
  readonly told: number;
  /** Cells that lie in the new picture, and those that were found where the camera has them. */
  readonly inView: readonly LoomCell[];
  readonly agreeing: readonly LoomCell[];
  /** Spread of what is left over, in what the matching says of itself. */
  readonly chi: number;
}

/** One look after another, each from a better camera: px per mm at most, how far aside a cell is looked for, mm. */
const LOOKS = [
  { finest: 2, reach: 5 },
  { finest: 2, reach: 2.5 },
  { finest: 4, reach: 1.2 },
] as const;
/** A place counts when it is so much liker than any other, in standard uncertainties. */
const DISTINCT = 3;
const LIKE = 0.3;
/** So many sigmas out is found somewhere else. */
const ASTRAY = 3.5;
/** Surroundings against which grain is seen, mm; what is weaker is noise, grey levels. */
const SURROUNDINGS = 3;
const GRAIN = 2;

/** Looks for every cell of the earlier photograph in the new one, from a first camera on. @returns null where too little is found. */
export function sharedPlaces(
  photo: Photo,
  earlier: EarlierLoom,
  cells: readonly LoomCell[],
  start: Camera,
  expected: Expected,
  prior: CameraPrior,
  mirrored: boolean,
  trace?: (line: string) => void,
): SharedLook | null {
  let camera = start;
  let look: SharedLook | null = null;
  const scaleBefore = scaleOf(earlier.camera, earlier.photo, earlier.mirrored, expected);
  for (const { finest, reach } of LOOKS) {
    const scale = scaleOf(camera, photo, mirrored, expected);
    const grid = flatGrid(expected, Math.min(finest, scaleBefore, scale));
    const seenBefore = flat(earlier.photo, earlier.camera, earlier.mirrored, scaleBefore, earlier, expected, grid);
    const seenNow = flat(photo, camera, mirrored, scale, earlier, expected, grid);
    const before = inContrast(seenBefore, cells, 0);
    const now = inContrast(seenNow, cells, reach);
    const inView = cells.filter((cell) => wholly(now, cell));
    const shifts = inView.flatMap((cell) =>
      cellShifts(before, now, cell, reach, 1.3 * expected.pitch).filter(
        ({ likeness, distinct }) => likeness > LIKE && distinct > DISTINCT,
      ),
    );
    look = settle(shifts, photo, earlier, camera, expected, prior, mirrored, inView);
    trace?.(
      `shared places: ${inView.length} cells, ${shifts.length} told, ${look?.places.length ?? 0} agree in ${look?.agreeing.length ?? 0} cells, chi ${look?.chi.toFixed(2)}`,
    );
    if (!look) return null;
    camera = look.fit.camera;
  }
  return look;
}

/** The loom front-on, every zone on its own face. */
function flat(
  photo: Photo,
  camera: Camera,
  mirrored: boolean,
  scale: number,
  { wood }: EarlierLoom,
  expected: Expected,
  grid: FlatGrid,
): FlatLoom {
  const map = mapOf(camera, photo, mirrored);
  const heights = new Map(cellZones.map((zone) => [zone, faceHeight(zone, expected, wood).z]));
  return flattenLoom(
    lightPicture(photo, scale, grid.pxPerMm),
    (x, y) => map(x, y, heights.get(zoneAt(expected, x, y))!),
    grid,
  );
}

const inContrast = (flat: FlatLoom, cells: readonly LoomCell[], around: number): FlatLoom => ({
  ...flat,
  light: localContrast(flat.light, withinCells(flat, cells, around), SURROUNDINGS * flat.grid.pxPerMm, GRAIN),
});

/** Whether a cell and a little around it lies in the picture. */
function wholly({ grid, seen }: FlatLoom, { x, y, halfWidth, halfHeight }: LoomCell): boolean {
  const around = 2;
  return [-1, 1].every((i) =>
    [-1, 1].every((j) => {
      const column = Math.round((x + i * (halfWidth + around) - grid.left) * grid.pxPerMm);
      const row = Math.round((grid.top - y - j * (halfHeight + around)) * grid.pxPerMm);
      const inside = column >= 0 && row >= 0 && column < grid.width && row < grid.height;
      // Beyond the wood's own edge there is only the table, which needn't be seen.
      return !inside || seen[row * grid.width + column] === 1;
    }),
  );
}

/** Fits the camera to the shifts, letting go of those that lie elsewhere. */
function settle(
  shifts: readonly CellShift[],
  photo: Photo,
  earlier: EarlierLoom,
  camera: Camera,
  expected: Expected,
  prior: CameraPrior,
  mirrored: boolean,
  inView: readonly LoomCell[],
): SharedLook | null {
  const places = shifts.map((shift) => placeOf(shift, photo, earlier, camera, expected, mirrored));
  let kept = places.map((_, k) => k);
  let scale = 1;
  for (let round = 0; round < 8; round++) {
    const used = kept.map((k) => places[k]!);
    if (used.length < FEWEST) return null;
    const evidence = placesEvidence(used, earlier, expected, photo, mirrored, camera, scale);
    if (!evidence) return null;
    const fit = fitPose([], camera, usualWood, prior, photo, mirrored, [evidence]);
    const parameters = Float64Array.of(...cameraToVector(fit.camera), ...fit.wood);
    const chi =
      scale *
      Math.sqrt(
        evidence.misfits(parameters).reduce((sum, value) => sum + value * value, 0) / Math.max(1, used.length - 9),
      );
    const all = placesEvidence(places, earlier, expected, photo, mirrored, camera, Math.max(1, chi));
    if (!all) return null;
    const out = all.out(parameters);
    const next = places.flatMap((_, k) => (Math.abs(out[k]!) < ASTRAY * all.sigmas[k]! ? [k] : []));
    const same = next.length === kept.length && next.every((k, i) => k === kept[i]);
    if ((same && Math.abs(Math.max(1, chi) - scale) < 0.05) || round === 7) {
      const agreeing = inView.filter((cell) => kept.some((k) => shifts[k]!.cell === cell));
      return { fit, places: used, told: places.length, inView, agreeing, chi };
    }
    kept = next;
    scale = Math.max(1, chi);
  }
  return null;
}

/** Fewest shifts a camera is fitted to. */
const FEWEST = 16;

function placeOf(
  { cell, ux, uy, shift, sigma }: CellShift,
  photo: PictureSize,
  earlier: EarlierLoom,
  camera: Camera,
  expected: Expected,
  mirrored: boolean,
): SharedPlace {
  const { z } = faceHeight(cell.zone, expected, earlier.wood);
  const before = mapOf(earlier.camera, earlier.photo, earlier.mirrored)(cell.x, cell.y, z);
  const now = mapOf(camera, photo, mirrored)(cell.x + shift * ux, cell.y + shift * uy, z);
  return {
    zone: cell.zone,
    before: { px: before.x, py: before.y },
    now: { px: now.x, py: now.y },
    ux,
    uy,
    sigma,
  };
}
