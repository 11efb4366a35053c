import { type Camera, cameraFromVector, type PictureSize, rotationMatrix } from './camera.ts';
import type { Expected } from './expected.ts';
import { toLoom } from './loomPose.ts';
import type { PoseEvidence } from './poseEvidence.ts';
import { poseOf } from './poseFit.ts';

interface Place {
  readonly x: number;
  readonly y: number;
}

/** What marks are seen in: the picture, how coarse it is, and the plan. */
export interface MarkedPicture {
  readonly size: PictureSize;
  readonly mirrored: boolean;
  readonly expected: Expected;
  readonly mmPerPx: number;
}

/** Evidence with how far it is out in words a weaver can check. */
export interface MarkEvidence extends PoseEvidence {
  /** Millimetres between what the mark says and what the parameters say. */
  readonly outMm: (parameters: ArrayLike<number>) => number;
}

/** With the magnifier a place is clicked to a pixel, on large pictures to this share of the long side (value from memory). */
const CLICK = 0.0005;
const clickMm = ({ size, mmPerPx }: MarkedPicture): number =>
  Math.max(1, CLICK * Math.max(size.width, size.height)) * mmPerPx;

/** How well a rounded corner of the wood is one place, and how far it lies from the plan's, mm (value from memory). */
const CORNER_PLAY = 0.5;

/** The opening's corners in the loom frame, mm: bottom left, bottom right, top right, top left. */
export function openingCorners(expected: Expected): readonly Place[] {
  const half = expected.openingWidth / 2;
  return [
    { x: -half, y: 0 },
    { x: half, y: 0 },
    { x: half, y: expected.openingHeight },
    { x: -half, y: expected.openingHeight },
  ];
}

/** A clicked inner corner. @param corner 0 to 3, in the order of `openingCorners`. */
export function cornerEvidence(clicked: Place, corner: number, picture: MarkedPicture): MarkEvidence {
  const place = openingCorners(picture.expected)[corner]!;
  const sigma = Math.hypot(clickMm(picture), CORNER_PLAY);
  const off = (v: ArrayLike<number>) => {
    const seen = toLoom(poseOf(v, picture.size, picture.mirrored), clicked.x, clicked.y);
    return { x: seen.x - place.x, y: seen.y - place.y };
  };
  return {
    freedom: 2,
    misfits: (v) => {
      const { x, y } = off(v);
      return Float64Array.of(x / sigma, y / sigma);
    },
    outMm: (v) => Math.hypot(off(v).x, off(v).y),
  };
}

/** By how much a flat thing seems larger that lies `above` mm over the middle of the strings. */
const nearer = (v: ArrayLike<number>, above: number): number => 1 + above / Math.exp(v[5]!);

/** How well a stroke is one place, and a ruler of the trade is right, as a share (value from memory). */
const STROKE = 0.2;
const RULER = 0.001;

/** Two clicked places on the warp a known way apart. */
export function lengthEvidence(from: Place, to: Place, length: number, picture: MarkedPicture): MarkEvidence {
  const sigma = Math.hypot(Math.SQRT2 * clickMm(picture), STROKE, RULER * length);
  const off = (v: ArrayLike<number>) => {
    const pose = poseOf(v, picture.size, picture.mirrored);
    const a = toLoom(pose, from.x, from.y);
    const b = toLoom(pose, to.x, to.y);
    return Math.hypot(a.x - b.x, a.y - b.y) / nearer(v, picture.expected.stringDiameter / 2) - length;
  };
  return { freedom: 1, misfits: (v) => Float64Array.of(off(v) / sigma), outMm: (v) => Math.abs(off(v)) };
}

/** ISO/IEC 7810:2019, ID-1: 85.60 × 53.98 mm, 0.76 mm thick. */
const CARD = { long: 85.6, short: 53.98, thick: 0.76 } as const;
/** Its corners are rounded by 3.18 mm: where the sides would meet is clicked in the air (value from memory). */
const CARD_CORNER = 0.3;

/** Four corners one after the other round a card, about its middle, the long side first or the short one. */
function cardCorners(longFirst: boolean): readonly Place[] {
  const x = (longFirst ? CARD.long : CARD.short) / 2;
  const y = (longFirst ? CARD.short : CARD.long) / 2;
  return [
    { x: -x, y: -y },
    { x, y: -y },
    { x, y },
    { x: -x, y },
  ];
}

/** Twice the area of a polygon, positive where it runs from x to y. */
const turning = (corners: readonly Place[]): number =>
  corners.reduce((sum, corner, k) => {
    const next = corners[(k + 1) % corners.length]!;
    return sum + corner.x * next.y - next.x * corner.y;
  }, 0);

/**
 * Clicked corners of a card on the warp. Where it lies and how it is turned is its own affair: what is left of the
 * eight figures when that is taken out speaks of scale and slant (least squares of a turn and a shift, Kabsch 1976).
 */
export function cardEvidence(clicked: readonly Place[], picture: MarkedPicture): MarkEvidence {
  const sigma = Math.hypot(clickMm(picture), CARD_CORNER);
  const above = picture.expected.stringDiameter / 2 + CARD.thick;
  const side = (corners: readonly Place[], k: number) => {
    const next = corners[(k + 1) % 4]!;
    return Math.hypot(corners[k]!.x - next.x, corners[k]!.y - next.y);
  };
  const longFirst = side(clicked, 0) + side(clicked, 2) > side(clicked, 1) + side(clicked, 3);
  const template = cardCorners(longFirst);
  const seenFlat = (v: ArrayLike<number>) => {
    const pose = poseOf(v, picture.size, picture.mirrored);
    const larger = nearer(v, above);
    const seen = clicked.map((corner) => toLoom(pose, corner.x, corner.y));
    return seen.map(({ x, y }) => ({ x: x / larger, y: y / larger }));
  };
  return {
    freedom: 5,
    misfits: (v) => {
      const seen = seenFlat(v);
      const way = turning(seen) < 0 ? -1 : 1;
      const middle = {
        x: seen.reduce((sum, { x }) => sum + x, 0) / 4,
        y: seen.reduce((sum, { y }) => sum + y, 0) / 4,
      };
      let along = 0;
      let across = 0;
      for (let k = 0; k < 4; k++) {
        const [x, y] = [template[k]!.x, way * template[k]!.y];
        const [sx, sy] = [seen[k]!.x - middle.x, seen[k]!.y - middle.y];
        along += x * sx + y * sy;
        across += x * sy - y * sx;
      }
      const long = Math.hypot(along, across);
      const [c, s] = [along / long, across / long];
      const out = new Float64Array(8);
      for (let k = 0; k < 4; k++) {
        const [x, y] = [template[k]!.x, way * template[k]!.y];
        out[2 * k] = (seen[k]!.x - middle.x - (c * x - s * y)) / sigma;
        out[2 * k + 1] = (seen[k]!.y - middle.y - (s * x + c * y)) / sigma;
      }
      return out;
    },
    outMm: (v) => {
      const seen = seenFlat(v);
      return Math.max(...[0, 1, 2, 3].map((k) => Math.abs(side(seen, k) - side(template, k))));
    },
  };
}

/** A camera held by hand over a loom looks straight down to within about this, radians (value from memory). */
const HELD_LEVEL = (8 * Math.PI) / 180;

/** That the camera was held level, as far as a hand does. */
export const heldLevel: PoseEvidence = {
  freedom: 2,
  misfits: (v) => {
    const r = rotationMatrix(cameraFromVector(v).turn);
    return Float64Array.of(r[6]! / HELD_LEVEL, r[7]! / HELD_LEVEL);
  },
};

/** A hold on what a few marks leave open, so loose that it weighs nothing beside any mark. */
export function roughlyAt(camera: Camera): PoseEvidence {
  const [place, size, turn] = [300, 0.7, 1];
  return {
    freedom: 4,
    misfits: (v) =>
      Float64Array.of(
        (v[2]! - camera.turn[2]) / turn,
        (v[3]! - camera.aimX) / place,
        (v[4]! - camera.aimY) / place,
        (v[5]! - camera.logDistance) / size,
      ),
  };
}
