import { blendChannels, brightness } from './blend.ts';
import { cameraProjection, lensOf, planeHomography } from './camera.ts';
import type { EarlierLoom, LookAlike } from './earlierLoom.ts';
import type { Expected } from './expected.ts';
import { mapOf } from './firstLook.ts';
import { flatGrid, flattenLoom, lightPicture, localContrast } from './flatLoom.ts';
import { faceHeight, loomCells, withinCells, zoneAt } from './loomCells.ts';
import { toLoom } from './loomPose.ts';
import type { Photo, Raster } from './raster.ts';
import { enlargedCoordinate, reducePhoto, reductionFor } from './reduce.ts';
import { scaleOf } from './refinePose.ts';

/** A grey picture in which look-alikes are looked for, 8 bits a pixel, and where in it (1) or not (0). */
export interface MatchView {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
  readonly within: Uint8Array;
}

/** Two pictures to be matched, and what a match between a pixel of each says. */
export interface MatchViews {
  readonly before: MatchView;
  readonly now: MatchView;
  readonly lookAlike: (before: { x: number; y: number }, now: { x: number; y: number }) => LookAlike;
}

const LONGEST = 2000;
/** px per mm of the earlier loom seen front-on. */
const FINEST = 3.5;
/** Surroundings against which things stand out, px; what is weaker is noise, grey levels. */
const SURROUNDINGS = 20;
const NOISE = 2;
/** Grey levels to one spread. */
const STEEP = 45;

const greyOf = ({ data }: Raster): Uint8Array =>
  Uint8Array.from(data, (value) => Math.max(0, Math.min(255, Math.round(128 + STEEP * value))));

/**
 * The earlier loom front-on, restricted to wood and settled cloth, and the new picture, both as contrast so that light
 * and shade tell alike. A picture turned over as in a looking-glass is turned back: look-alikes are never mirror images.
 */
export function matchViews(photo: Photo, earlier: EarlierLoom, expected: Expected, mirrored: boolean): MatchViews {
  const map = mapOf(earlier.camera, earlier.photo, earlier.mirrored);
  const scale = scaleOf(earlier.camera, earlier.photo, earlier.mirrored, expected);
  const grid = flatGrid(expected, Math.min(FINEST, scale));
  const flat = flattenLoom(lightPicture(earlier.photo, scale, grid.pxPerMm), map, grid);
  const within = withinCells(flat, loomCells(expected, earlier.fells), 0);
  const projection = cameraProjection(earlier.camera, earlier.photo, earlier.mirrored);
  const lens = lensOf(earlier.camera, earlier.photo);
  /** What is seen at a place of the strings' plane, on the face it lies on. */
  const raised = (x: number, y: number) => {
    const { z } = faceHeight(zoneAt(expected, x, y), expected, earlier.wood);
    const seen = map(x, y);
    return { ...toLoom({ homography: planeHomography(projection, z), lens }, seen.x, seen.y), z };
  };
  const factor = reductionFor(photo, LONGEST);
  const light = blendChannels(reducePhoto(photo, factor), brightness);
  if (mirrored)
    for (let y = 0; y < light.height; y++) light.data.subarray(y * light.width, (y + 1) * light.width).reverse();
  const { width, height } = light;
  const everywhere = new Uint8Array(width * height).fill(1);
  return {
    before: {
      width: grid.width,
      height: grid.height,
      grey: greyOf(localContrast(flat.light, flat.seen, SURROUNDINGS, NOISE)),
      within,
    },
    now: {
      width,
      height,
      grey: greyOf(localContrast(light, everywhere, SURROUNDINGS, NOISE)),
      within: everywhere,
    },
    lookAlike: (before, now) => ({
      ...raised(grid.left + before.x / grid.pxPerMm, grid.top - before.y / grid.pxPerMm),
      px: enlargedCoordinate(mirrored ? width - 1 - now.x : now.x, factor),
      py: enlargedCoordinate(now.y, factor),
    }),
  };
}
