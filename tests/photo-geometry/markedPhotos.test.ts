import { describe, expect, it } from 'vitest';
import { loadPhoto, loadPiece } from '../../scripts/photo/loadPhoto.ts';
import { trueLoomToPhoto } from '../../scripts/photo/trueCamera.ts';
import type { Marks } from '../../src/core/model/marks.ts';
import { mm, type PhotoPoint, photoPx } from '../../src/core/model/units.ts';
import { expectedOf } from '../../src/core/photo/expected.ts';
import { locateLoom } from '../../src/core/photo/locateLoom.ts';
import { type LoomPose, toLoom } from '../../src/core/photo/loomPose.ts';
import { openingCorners } from '../../src/core/photo/markEvidence.ts';
import type { Photo } from '../../src/core/photo/raster.ts';

const folder = 'tests/fixtures/photos';

async function load(name: string) {
  const photo = await loadPhoto(`${folder}/${name}.jpg`);
  const piece = loadPiece(`${folder}/${name}.brief.json`);
  const truth = trueLoomToPhoto(`${folder}/${name}.truth.json`, `${folder}/${name}.brief.json`, photo);
  return { photo, piece, truth };
}
type Scene = Awaited<ReturnType<typeof load>>;

/** Clicks about a pixel beside the true places, the same every time. */
function clicker({ truth }: Scene): (x: number, y: number, z?: number) => PhotoPoint {
  let state = 4711;
  const next = () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return (x, y, z = 0) => {
    const seen = truth.map(x, y, z);
    const [r, a] = [Math.sqrt(-2 * Math.log(next())), 2 * Math.PI * next()];
    return { x: photoPx(seen.x + r * Math.cos(a)), y: photoPx(seen.y + r * Math.sin(a)) };
  };
}

const none: Marks = { corners: [null, null, null, null], lengths: [], card: null };
const cornersOf = (scene: Scene, which: readonly number[]): Marks['corners'] => {
  const click = clicker(scene);
  return openingCorners(expectedOf(scene.piece)).map(({ x, y }, k) => (which.includes(k) ? click(x, y) : null));
};

/** Largest distance over the cloth, mm, between the renderer's camera and the pose, and the same in the pose's sigmas. */
function farthest(pose: LoomPose, { piece, truth }: Scene): { readonly mm: number; readonly sigmas: number } {
  const half = (piece.warp.ends * piece.loom.notchPitch) / 2;
  const off = [-1, 0, 1].flatMap((i) =>
    [0, 0.5, 1].map((share) => {
      const [x, y] = [i * half, piece.cloth.baseAboveBottomBar + share * piece.cloth.height];
      const seen = truth.map(x, y);
      const got = toLoom(pose, seen.x, seen.y);
      const sigma = pose.sharedSigma(x, y);
      return {
        mm: Math.hypot(got.x - x, got.y - y),
        sigmas: Math.max(Math.abs(got.x - x) / sigma.x, Math.abs(got.y - y) / sigma.y),
      };
    }),
  );
  return { mm: Math.max(...off.map((one) => one.mm)), sigmas: Math.max(...off.map((one) => one.sigmas)) };
}

/** The same photograph with a plain cloth laid over everything but the opening: strings show, the frame doesn't. */
function frameHidden({ photo, piece, truth }: Scene): Photo {
  const rgb = photo.rgb.slice();
  const [half, height] = [piece.loom.openingWidth / 2 - 1, piece.loom.openingHeight];
  const round = [
    [-half, 1.5],
    [half, 1.5],
    [half, height - 1.5],
    [-half, height - 1.5],
  ] as const;
  // Sides in small steps: the lens bends them.
  const outline = round.flatMap(([x, y], k) => {
    const [toX, toY] = round[(k + 1) % 4]!;
    return Array.from({ length: 40 }, (_, step) => truth.map(x + ((toX - x) * step) / 40, y + ((toY - y) * step) / 40));
  });
  for (let row = 0; row < photo.height; row++) {
    const crossings = outline
      .flatMap((from, k) => {
        const to = outline[(k + 1) % outline.length]!;
        return from.y > row === to.y > row ? [] : [from.x + ((to.x - from.x) * (row - from.y)) / (to.y - from.y)];
      })
      .sort((a, b) => a - b);
    let passed = 0;
    for (let column = 0; column < photo.width; column++) {
      while (passed < crossings.length && crossings[passed]! < column) passed++;
      if (passed % 2 === 1) continue;
      const at = (row * photo.width + column) * 3;
      rgb[at] = rgb[at + 1] = rgb[at + 2] = 112 + ((column * 31 + row * 17) % 11);
    }
  }
  return { ...photo, rgb };
}

describe('marks in rendered photographs', () => {
  it('a card on the warp takes part where it agrees, and is named where it is no such card', {
    timeout: 300_000,
  }, async () => {
    const scene = await load('dev09');
    const click = clicker(scene);
    // Where the renderer laid it, and how high its upper side is.
    const at = { x: 60, y: 280, z: 1.96, turn: (12 * Math.PI) / 180 };
    const cardOf = (size: number): Marks => ({
      ...none,
      card: [
        [0, 0],
        [85.6, 0],
        [85.6, 53.98],
        [0, 53.98],
      ].map(([u, v]) => {
        const [c, s] = [Math.cos(at.turn) * size, Math.sin(at.turn) * size];
        return click(at.x + c * u! - s * v!, at.y + s * u! + c * v!, at.z);
      }),
    });
    const located = locateLoom(scene.photo, scene.piece, { marks: cardOf(1) });
    expect(located.ok && located.value.remarks).toEqual([]);
    expect(located.ok && located.value.pose.reference.method).toBe('fused');
    expect(located.ok && located.value.pose.reference.parts).toContain('card');
    expect(located.ok && farthest(located.value.pose, scene).mm).toBeLessThan(0.3);

    const other = locateLoom(scene.photo, scene.piece, { marks: cardOf(0.96) });
    expect(other.ok && other.value.remarks.map(({ message }) => message.mm)).toEqual([
      expect.stringMatching(/^The card is [34]\.\d mm out/),
    ]);
    expect(other.ok && other.value.pose.reference.parts).not.toContain('card');
    expect(other.ok && farthest(other.value.pose, scene).mm).toBeLessThan(0.3);
  });

  it('a corner and a length that are out are named and pull nothing', { timeout: 300_000 }, async () => {
    const scene = await load('dev01');
    const click = clicker(scene);
    const corners = [...cornersOf(scene, [0, 1, 2, 3])];
    corners[2] = { x: photoPx(corners[2]!.x + 30), y: corners[2]!.y };
    const z = scene.piece.warp.stringDiameter / 2;
    const lengths = [{ from: click(-60, 250, z), to: click(60, 250, z), length: mm(123) }];
    const located = locateLoom(scene.photo, scene.piece, { marks: { corners, lengths, card: null } });
    expect(located.ok && located.value.remarks.map(({ message }) => message.mm.replace(/ is .*/, '')).sort()).toEqual([
      'The length of 123.0 mm',
      'The top right corner',
    ]);
    expect(located.ok && located.value.pose.reference.parts).toContain('clicked corners');
    expect(located.ok && farthest(located.value.pose, scene).mm).toBeLessThan(0.3);
  });

  it('three corners and the strings tie a picture in which no frame shows; two say what they lack', {
    timeout: 300_000,
  }, async () => {
    const scene = await load('dev01');
    const photo = frameHidden(scene);
    const three = locateLoom(photo, scene.piece, { marks: { ...none, corners: cornersOf(scene, [1, 2, 3]) } });
    expect(three.ok && three.value.pose.reference.method).toBe('fused');
    expect(three.ok && three.value.pose.reference.parts).toEqual([
      'notch pitch at the top bar',
      'notch pitch at the bottom bar',
      'clicked corners',
    ]);
    expect(three.ok && three.value.endsCounted).toBe(scene.piece.warp.ends);
    expect(three.ok && farthest(three.value.pose, scene).sigmas).toBeLessThan(3);
    expect(three.ok && farthest(three.value.pose, scene).mm).toBeLessThan(0.7);
    const two = locateLoom(photo, scene.piece, { marks: { ...none, corners: cornersOf(scene, [0, 2]) } });
    expect(!two.ok && two.problem.code).toBe('points-do-not-fit');
    expect(!two.ok && two.problem.remedy).toMatch(/^Mark the other inner corners too/);
  });

  it('two corners of one side are never enough for a wrong frame', { timeout: 300_000 }, async () => {
    const scene = await load('dev09');
    const located = locateLoom(scene.photo, scene.piece, { marks: { ...none, corners: cornersOf(scene, [1, 2]) } });
    expect(located.ok && farthest(located.value.pose, scene).mm).toBeLessThan(0.3);
  });
});
