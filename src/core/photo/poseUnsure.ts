import type { PictureSize } from './camera.ts';
import { notchX } from './coarseCamera.ts';
import type { Expected } from './expected.ts';
import { FITTED, type PoseFit } from './poseFit.ts';
import { sharedSigmaOf } from './poseSigma.ts';

/** Standard uncertainty, mm, of a place on the cloth beyond which a pose is no pose: half of what is called wrong. */
export const MOST_UNSURE = 0.75;

/** Share of a pitch by which a notch's place may be unsure for a string to be known as its own. */
export const OWN_NOTCH = 1 / 6;

/** Largest standard uncertainty of the pose along x and y at some loom places, mm. */
export function unsureAt(
  { photo, mirrored }: { readonly photo: PictureSize; readonly mirrored: boolean },
  fit: Pick<PoseFit, 'camera' | 'covariance'>,
  places: readonly (readonly [number, number])[],
): { readonly x: number; readonly y: number } {
  const sigma = sharedSigmaOf(fit.camera, fit.covariance, FITTED, photo, mirrored, { x: 0, y: 0 });
  const all = places.map(([x, y]) => sigma(x, y));
  return { x: Math.max(...all.map(({ x }) => x)), y: Math.max(...all.map(({ y }) => y)) };
}

/** x of the left and right outer notch of the warp, loom mm. */
export const outerNotches = (expected: Expected): readonly [number, number] => [
  notchX(expected, expected.firstNotch),
  notchX(expected, expected.firstNotch + expected.ends - 1),
];

/** Corners of where the cloth can be, loom mm. */
export function clothCorners(expected: Expected): readonly (readonly [number, number])[] {
  const [left, right] = outerNotches(expected);
  const { base, openingHeight } = expected;
  return [left, right].flatMap((x) => [base, 0.85 * openingHeight].map((y) => [x, y] as const));
}
