import { type Camera, cameraToVector } from './camera.ts';
import type { Expected } from './expected.ts';
import { mapOf } from './firstLook.ts';
import type { FrameEdges } from './frameEdges.ts';
import { toLoom } from './loomPose.ts';
import { type FollowedEnd, lookSigma } from './measureStrings.ts';
import { poseOf, type StraightThing } from './poseFit.ts';
import type { Photo } from './raster.ts';

/** How far down a rounded outer edge its outline lies, mm (edges are rounded by about a millimetre: value from memory). */
const EDGE_ROUND = 1.2;

/** How far a rail's edge may lie from where the plan has it beside the notches, mm (value from memory). */
const RAIL_OFFSET = 1;

/** The wood's edges as straight things: bars tell y, rails only that the lens bends straight edges. */
export function frameThings(
  { edges }: Pick<FrameEdges, 'edges'>,
  expected: Expected,
  camera: Camera,
  photo: Photo,
  mirrored: boolean,
): StraightThing[] {
  const map = mapOf(camera, photo, mirrored);
  const flat = poseOf(cameraToVector(camera), photo, mirrored);
  const half = expected.openingWidth / 2;
  const height = expected.openingHeight;
  const things: StraightThing[] = [];
  for (const { side, kind, points, support } of edges) {
    const bar = side === 'bottom' || side === 'top';
    const outer = kind === 'outer';
    if (support < (bar ? 0.25 : 0.5) || points.length < 20) continue;
    const out = side === 'bottom' || side === 'left' ? -1 : 1;
    const inner = side === 'bottom' ? 0 : side === 'top' ? height : out * half;
    const value = inner + (outer ? out * (bar ? expected.bar : expected.rail) : 0);
    // The edge lies below the strings' plane, so it is seen nearer the middle than it is; more so where the view is slanted.
    const depth = expected.stringDiameter / 2 + (outer ? EDGE_ROUND : 0);
    const apparentAt = (below: number) => {
      const seen = map(bar ? 0 : value, bar ? value : height / 2, -below);
      return toLoom(flat, seen.x, seen.y);
    };
    const apparent = apparentAt(depth);
    things.push({
      name: `${kind} ${side}`,
      axis: bar ? 'y' : 'x',
      value: bar ? apparent.y : apparent.x,
      anchor: bar ? 0 : height / 2,
      inset: bar ? [outer ? 0 : out, outer ? -out : 0, 0] : [0, 0, apparentAt(depth + 1).x - apparent.x],
      points: points.map((point) => ({ ...point, sigma: 0.5 })),
      // Teeth and shade make the inner edge an unsure one; the notches needn't stand in the very middle of the rails.
      offsetSigma: bar ? (outer ? 0.2 : 0.5) : RAIL_OFFSET,
      slopeSigma: bar ? 0.002 : 0.003,
      bowSigma: outer ? 0.2 : 0.6,
      bowStart: bar ? -half : 0,
      bowEnd: bar ? half : height,
    });
  }
  return things;
}

/**
 * Looks along one string err alike over about ten of them: its twist, a shadow, the table behind it. So their sigma is
 * taken this many times as large, or many strings would outweigh the straightness of the wood.
 */
const ALIKE = 3;

/** How far a string may sit beside the middle of its notch, mm (value from memory). */
const NOTCH_PLAY = 0.12;

/**
 * Strings as straight things, each through its notch: at the bottom bar for the ends in `useLower`, at the top bar for
 * those in `useUpper`, or for all.
 * @param most samples of each that count, from the bar on.
 */
export function stringThings(
  ends: readonly FollowedEnd[],
  expected: Expected,
  useLower: ReadonlySet<number>,
  useUpper: ReadonlySet<number> | null = null,
  most = Number.POSITIVE_INFINITY,
): StraightThing[] {
  const things: StraightThing[] = [];
  for (const { end, notch, upper, lower } of ends) {
    const points = (samples: FollowedEnd['upper']) =>
      samples.slice(0, most).map((sample) => ({ px: sample.px, py: sample.py, sigma: ALIKE * lookSigma(sample) }));
    if (upper.length >= 6 && (useUpper === null || useUpper.has(end))) {
      things.push({
        name: `upper ${end}`,
        axis: 'x',
        value: notch,
        anchor: expected.openingHeight,
        inset: [0, 0, 0],
        points: points(upper),
        offsetSigma: NOTCH_PLAY,
        slopeSigma: 0.2,
        bowSigma: 0.2,
        bowStart: expected.openingHeight,
        bowEnd: upper[Math.min(most, upper.length) - 1]!.y,
      });
    }
    if (useLower.has(end) && lower.length >= 4) {
      things.push({
        name: `lower ${end}`,
        axis: 'x',
        value: notch,
        anchor: 0,
        inset: [0, 0, 0],
        points: points(lower),
        offsetSigma: NOTCH_PLAY,
        slopeSigma: 0.2,
        bowSigma: 0,
        bowStart: 0,
        bowEnd: 1,
      });
    }
  }
  return things;
}

/** Holds a camera's y in place while strings alone move it. */
export function loosePlace(camera: Camera, photo: Photo, mirrored: boolean, expected: Expected): StraightThing[] {
  const map = mapOf(camera, photo, mirrored);
  return [0, expected.openingHeight].map((value) => ({
    name: 'place',
    axis: 'y',
    value,
    anchor: 0,
    inset: [0, 0, 0],
    points: [-100, 0, 100].map((x) => {
      const seen = map(x, value);
      return { px: seen.x, py: seen.y, sigma: 4 };
    }),
    offsetSigma: 0,
    slopeSigma: 0,
    bowSigma: 0,
    bowStart: 0,
    bowEnd: 1,
  }));
}
