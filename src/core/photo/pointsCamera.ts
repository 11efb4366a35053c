import { success } from '../model/outcome.ts';
import type { PhotoPoint } from '../model/units.ts';
import {
  type Camera,
  cameraFromVector,
  cameraProjection,
  cameraSteps,
  cameraToVector,
  lensOf,
  type PictureSize,
  projectPoint,
} from './camera.ts';
import { type CameraPrior, plumbCamera } from './coarseCamera.ts';
import type { Expected } from './expected.ts';
import { leastSquares } from './leastSquares.ts';
import { refusal, type Sought } from './refusal.ts';

/** How well a corner is clicked, as a share of the picture's long side (value from memory: a pixel or two of 1500). */
const CLICK = 0.001;

/** Clicked corners as a camera. */
export interface PlacedByPoints {
  readonly camera: Camera;
  /** 9 × 9. */
  readonly covariance: Float64Array;
  /** The corners run the other way round: the picture shows left for right. */
  readonly mirrored: boolean;
  readonly residualMm: number;
}

/** The camera that sees the opening's corners where they were clicked. */
export function cameraFromPoints(
  points: readonly PhotoPoint[],
  expected: Expected,
  prior: CameraPrior,
  size: PictureSize,
): Sought<PlacedByPoints> {
  if (points.length !== 4) {
    return refusal(
      'points-do-not-fit',
      `Four points are needed; there are ${points.length}.`,
      "Click the loom's bottom left, bottom right, top right and top left inner corner, in that order.",
    );
  }
  const turns = points.map((point, k) => {
    const next = points[(k + 1) % 4]!;
    const after = points[(k + 2) % 4]!;
    return (next.x - point.x) * (after.y - next.y) - (next.y - point.y) * (after.x - next.x);
  });
  const area = Math.abs(turns.reduce((sum, turn) => sum + turn, 0)) / 4;
  const oneWay = turns.every((turn) => turn > 0) || turns.every((turn) => turn < 0);
  if (!oneWay || area < 0.01 * size.width * size.height) {
    return refusal(
      'points-do-not-fit',
      'The four points do not make a frame.',
      "Click the loom's bottom left, bottom right, top right and top left inner corner, in that order.",
    );
  }
  // Down the picture y grows, so corners that run anticlockwise on the loom turn negative unless mirrored.
  const mirrored = turns[0]! > 0;
  const half = expected.openingWidth / 2;
  const corners = [
    [-half, 0],
    [half, 0],
    [half, expected.openingHeight],
    [-half, expected.openingHeight],
  ] as const;
  const middle = {
    x: points.reduce((sum, point) => sum + point.x, 0) / 4,
    y: points.reduce((sum, point) => sum + point.y, 0) / 4,
  };
  const [bottomLeft, bottomRight, topRight, topLeft] = points as readonly [
    PhotoPoint,
    PhotoPoint,
    PhotoPoint,
    PhotoPoint,
  ];
  const upX = topRight.x + topLeft.x - bottomLeft.x - bottomRight.x;
  const upY = topRight.y + topLeft.y - bottomLeft.y - bottomRight.y;
  const pxPerMm = Math.hypot(upX, upY) / 2 / expected.openingHeight;
  const turn = Math.atan2(upX, -upY);
  const start = plumbCamera(expected, pxPerMm, turn, middle, size, prior);
  const sigma = Math.max(1, CLICK * Math.max(size.width, size.height));
  const fit = leastSquares(
    cameraToVector(start),
    (v) => {
      const camera = cameraFromVector(v);
      const projection = cameraProjection(camera, size, mirrored);
      const lens = lensOf(camera, size);
      const out = new Float64Array(11);
      corners.forEach(([x, y], k) => {
        const seen = projectPoint(projection, lens, x, y, 0);
        out[2 * k] = (seen.x - points[k]!.x) / sigma;
        out[2 * k + 1] = (seen.y - points[k]!.y) / sigma;
      });
      // Four corners can't tell the lens; a long lens and a near one differ little here.
      out[8] = (camera.logFocal - prior.logFocal) / (2 * prior.logFocalSigma);
      out[9] = (camera.k1 - prior.k1) / Math.min(prior.k1Sigma, 0.02);
      out[10] = (camera.k2 - prior.k2) / prior.k2Sigma;
      return out;
    },
    { steps: cameraSteps, rounds: 60 },
  );
  let squares = 0;
  for (let k = 0; k < 8; k++) squares += (fit.residuals[k]! * sigma) ** 2;
  const residualPx = Math.sqrt(squares / 4);
  if (!Number.isFinite(residualPx) || residualPx / pxPerMm > 0.03 * expected.openingHeight) {
    return refusal(
      'points-do-not-fit',
      'The four points do not fit an opening of the size in the plan.',
      "Check the opening's width and height in the plan, and click the inner corners again.",
    );
  }
  const inflate = Math.max(1, residualPx / sigma) ** 2;
  return success({
    camera: cameraFromVector(fit.parameters),
    covariance: fit.covariance.map((value) => value * inflate),
    mirrored,
    residualMm: residualPx / pxPerMm,
  });
}
