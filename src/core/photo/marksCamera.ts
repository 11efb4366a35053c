import { cornersMarked, type Marks } from '../model/marks.ts';
import { success } from '../model/outcome.ts';
import type { PhotoPoint } from '../model/units.ts';
import type { Camera, PictureSize } from './camera.ts';
import { type CameraPrior, plumbCamera } from './coarseCamera.ts';
import type { Expected } from './expected.ts';
import { openingCorners } from './markEvidence.ts';
import { cameraFromPoints } from './pointsCamera.ts';
import { refusal, type Sought } from './refusal.ts';

/** A first camera by what was clicked. */
export interface FirstByMarks {
  readonly camera: Camera;
  /** The corners run the other way round: the picture shows left for right. Two of them can't tell: null. */
  readonly mirrored: boolean | null;
}

/** Corners nearer to each other than this share of the picture's short side say too little. */
const NEAREST = 0.1;
const cornerRemedy = 'Mark two inner corners of the opening at least, as far apart as can be, or all four.';

/** The camera that sees the opening's corners about where they were clicked: by four of them, or straight above two or three. */
export function firstByMarks(
  marks: Marks,
  expected: Expected,
  prior: CameraPrior,
  size: PictureSize,
  mirroredCamera: boolean,
): Sought<FirstByMarks> {
  const count = cornersMarked(marks);
  if (count === 4) return cameraFromPoints(marks.corners as readonly PhotoPoint[], expected, prior, size);
  if (count < 2) {
    return refusal('points-do-not-fit', 'One corner alone does not place the loom in the picture.', cornerRemedy);
  }
  const places = openingCorners(expected);
  const pairs = marks.corners.flatMap((corner, k) => (corner === null ? [] : [{ seen: corner, place: places[k]! }]));
  const [a, b, c] = pairs;
  const apart = Math.min(
    ...pairs.map((one, k) => {
      const next = pairs[(k + 1) % pairs.length]!;
      return Math.hypot(one.seen.x - next.seen.x, one.seen.y - next.seen.y);
    }),
  );
  const turn =
    c === undefined
      ? 0
      : (b!.seen.x - a!.seen.x) * (c.seen.y - b!.seen.y) - (b!.seen.y - a!.seen.y) * (c.seen.x - b!.seen.x);
  const bent = c === undefined ? apart : Math.abs(turn) / apart;
  if (Math.min(apart, bent) < NEAREST * Math.min(size.width, size.height)) {
    return refusal('points-do-not-fit', 'The corners marked lie too near each other or in one line.', cornerRemedy);
  }
  // Down the picture y grows, so corners that run anticlockwise on the loom turn negative unless mirrored.
  const mirrored = c === undefined ? mirroredCamera : turn > 0;
  // The similarity that carries the loom, its y downwards, to the picture: least squares over the corners.
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const flat = pairs.map(({ seen, place }) => ({ seen, x: mirrored ? -place.x : place.x, y: -place.y }));
  const [mx, my] = [mean(flat.map(({ x }) => x)), mean(flat.map(({ y }) => y))];
  const [sx, sy] = [mean(flat.map(({ seen }) => seen.x)), mean(flat.map(({ seen }) => seen.y))];
  let [along, across, squares] = [0, 0, 0];
  for (const { seen, x, y } of flat) {
    along += (x - mx) * (seen.x - sx) + (y - my) * (seen.y - sy);
    across += (x - mx) * (seen.y - sy) - (y - my) * (seen.x - sx);
    squares += (x - mx) ** 2 + (y - my) ** 2;
  }
  const [p, q] = [along / squares, across / squares];
  const below = -expected.openingHeight / 2;
  const middle = { x: sx + p * (0 - mx) - q * (below - my), y: sy + q * (0 - mx) + p * (below - my) };
  const camera = plumbCamera(expected, Math.hypot(p, q), Math.atan2(q, p), middle, size, prior);
  const aimX = mirrored ? -camera.aimX : camera.aimX;
  return success({ camera: { ...camera, aimX }, mirrored: c === undefined ? null : mirrored });
}
