import { expect, test } from 'vitest';
import type { Camera } from '../../src/core/photo/camera.ts';
import { usualCamera, usualWood } from '../../src/core/photo/coarseCamera.ts';
import { edgeProfile, supportAt } from '../../src/core/photo/edgeProfile.ts';
import type { Expected } from '../../src/core/photo/expected.ts';
import { mapOf } from '../../src/core/photo/firstLook.ts';
import type { FrameEdge } from '../../src/core/photo/frameEdges.ts';
import { frameThings, stringThings } from '../../src/core/photo/knownThings.ts';
import type { FollowedEnd } from '../../src/core/photo/measureStrings.ts';
import { fitPose } from '../../src/core/photo/poseFit.ts';

const plan: Expected = {
  pitch: 6,
  notches: 41,
  openingWidth: 250,
  openingHeight: 340,
  bar: 26,
  rail: 26,
  depth: 18,
  ends: 31,
  firstNotch: 5,
  stringDiameter: 2,
  stringsPerEnd: 1,
  base: 50,
};
const photo = { width: 1500, height: 2000, rgb: new Uint8Array(0) };
const camera: Camera = {
  turn: [0.12, -0.1, 0.04],
  aimX: 3,
  aimY: 165,
  logDistance: Math.log(470),
  logFocal: Math.log(1600),
  k1: -0.02,
  k2: 0,
};
const map = mapOf(camera, photo, false);
const half = plan.openingWidth / 2;
const outward = { bottom: -1, left: -1, top: 1, right: 1 } as const;

/** The wood's eight edges as the camera sees them, the rails' faces `let` mm below the bars'. */
const edgesSeen = (let_: number): FrameEdge[] =>
  (['bottom', 'top', 'left', 'right'] as const).flatMap((side) =>
    (['inner', 'outer'] as const).map((kind) => {
      const bar = side === 'bottom' || side === 'top';
      const inner = side === 'bottom' ? 0 : side === 'top' ? plan.openingHeight : outward[side] * half;
      // Edges are rounded: seen on the wood's side of where they are, an outer edge a little farther down.
      const rounded = kind === 'inner' ? usualWood[0] : -usualWood[1];
      const value = inner + outward[side] * ((kind === 'outer' ? plan.bar : 0) + (bar ? rounded : 0));
      const below = plan.stringDiameter / 2 + (kind === 'outer' ? 1.2 : 0) + (bar ? 0 : let_);
      const points = Array.from({ length: 60 }, (_, k) => {
        const along = (k + 0.5) / 60;
        const seen = bar
          ? map(-half + 2 * half * along, value, -below)
          : map(value, plan.openingHeight * along, -below);
        return { px: seen.x, py: seen.y };
      });
      return { side, kind, points, support: 1 };
    }),
  );

/** Upper strings through their notches. */
const strings: FollowedEnd[] = Array.from({ length: plan.ends }, (_, end) => {
  const notch = (plan.firstNotch + end - (plan.notches - 1) / 2) * plan.pitch;
  const upper = Array.from({ length: 40 }, (_, k) => {
    const y = plan.openingHeight - 2 - 4 * k;
    const seen = map(notch, y);
    return { x: notch, y, px: seen.x, py: seen.y, sigma: 0.1, profile: { contrast: 60 } };
  });
  return { end, notch, upper, lower: [] } as unknown as FollowedEnd;
});

test.each([0, 4, 9])('rails let in by %d mm are found so, and lead no corner astray', (depth) => {
  const all = new Set(strings.map(({ end }) => end));
  let found = { ...camera, turn: [0.1, -0.08, 0.03] as const, aimX: 1, logFocal: Math.log(1750) } as Camera;
  let wood = usualWood;
  for (let round = 0; round < 4; round++) {
    const things = frameThings({ edges: edgesSeen(depth) }, plan, found, photo, false);
    const fit = fitPose(
      [...things, ...stringThings(strings, plan, new Set(), all)],
      found,
      wood,
      usualCamera(photo),
      photo,
      false,
    );
    found = fit.camera;
    wood = fit.wood;
  }
  // What is usual draws it in a little.
  expect(Math.abs(wood[2] - depth)).toBeLessThan(0.5 + 0.15 * depth);
  const seen = mapOf(found, photo, false);
  for (const x of [-half, half]) {
    for (const y of [0, plan.openingHeight]) {
      const [is, should] = [seen(x, y), map(x, y)];
      // About three pixels a millimetre.
      expect(Math.hypot(is.x - should.x, is.y - should.y) / 3).toBeLessThan(0.25);
    }
  }
});

/** Wood up to 26 mm, then the frame's shadow for 4 mm, then the table in the light; one pixel is half a millimetre. */
function barAndShadow() {
  const [width, height] = [40, 100];
  const channels = [0, 1, 2].map((c) => {
    const channel = new Float32Array(width * height);
    for (let row = 0; row < height; row++) {
      const colour = row < 52 ? [196, 160, 112] : row < 60 ? [52, 84, 60] : [104, 168, 120];
      channel.fill(colour[c]!, row * width, (row + 1) * width);
    }
    return channel;
  });
  return { width, height, channels } as unknown as Parameters<typeof edgeProfile>[0];
}

test('the edge of the frame’s shadow is no edge of the wood', () => {
  const rows = Array.from({ length: 30 }, (_, k) => k + 5);
  const profile = (woodAt: number | null) =>
    edgeProfile(
      barAndShadow(),
      (value, row) => ({ x: row, y: 2 * value }),
      4,
      40,
      0.25,
      rows,
      () => true,
      woodAt,
    );
  for (const woodAt of [null, 17]) expect(supportAt(profile(woodAt), 25.75)).toBeGreaterThan(0.8);
  expect(supportAt(profile(null), 29.75)).toBeGreaterThan(0.8);
  expect(supportAt(profile(17), 29.75)).toBe(0);
});
