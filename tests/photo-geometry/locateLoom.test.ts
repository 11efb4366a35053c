import { describe, expect, it } from 'vitest';
import { loadPhoto, loadPiece } from '../../scripts/photo/loadPhoto.ts';
import { trueLoomToPhoto } from '../../scripts/photo/trueCamera.ts';
import type { FittedLens } from '../../src/core/model/check.ts';
import { fourCorners } from '../../src/core/model/marks.ts';
import { photoPx } from '../../src/core/model/units.ts';
import { locateLoom } from '../../src/core/photo/locateLoom.ts';
import { type LoomPose, toLoom } from '../../src/core/photo/loomPose.ts';

const folder = 'tests/fixtures/photos';

async function load(name: string) {
  const photo = await loadPhoto(`${folder}/${name}.jpg`);
  const piece = loadPiece(`${folder}/${name}.brief.json`);
  const truth = trueLoomToPhoto(`${folder}/${name}.truth.json`, `${folder}/${name}.brief.json`, photo);
  return { photo, piece, truth };
}

/** Distances, mm, between where the renderer's camera put points over the cloth and where the pose finds them. */
function errors(pose: LoomPose, scene: Awaited<ReturnType<typeof load>>): number[] {
  const { piece, truth } = scene;
  const half = (piece.warp.ends * piece.loom.notchPitch) / 2;
  const out: number[] = [];
  for (let i = -2; i <= 2; i++) {
    for (let j = 0; j <= 4; j++) {
      const x = (i / 2) * half;
      const y = piece.cloth.baseAboveBottomBar + (j / 4) * piece.cloth.height;
      const seen = truth.map(x, y);
      const got = toLoom(pose, seen.x, seen.y);
      out.push(Math.hypot(got.x - x, got.y - y));
    }
  }
  return out.sort((a, b) => a - b);
}

type Located = ReturnType<typeof locateLoom>;
const located = new Map<string, Promise<Located>>();
/** A photograph located by itself: once for all that is asked of it. */
const locatedAlone = (name: string): Promise<Located> => {
  const known = located.get(name) ?? load(name).then(({ photo, piece }) => locateLoom(photo, piece));
  located.set(name, known);
  return known;
};

describe('locating a loom in rendered photographs', () => {
  // Upright on plain wood, over a checkered table, a quarter turn with a card on the warp.
  for (const name of ['dev01', 'dev05', 'dev09']) {
    it(`ties ${name} to millimetres and counts its ends`, { timeout: 300_000 }, async () => {
      const scene = await load(name);
      const located = await locatedAlone(name);
      expect(located.ok).toBe(true);
      if (!located.ok) return;
      const off = errors(located.value.pose, scene);
      expect(off[12]).toBeLessThan(0.2);
      expect(off[24]).toBeLessThan(0.4);
      expect(located.value.endsCounted).toBe(scene.piece.warp.ends);
      const sigma = located.value.pose.sharedSigma(0, scene.piece.cloth.baseAboveBottomBar);
      expect(sigma.y).toBeGreaterThan(0.05);
      expect(sigma.y).toBeLessThan(0.4);
    });
  }

  it('takes clicked corners a few pixels out', { timeout: 300_000 }, async () => {
    const scene = await load('dev01');
    const half = scene.piece.loom.openingWidth / 2;
    const height = scene.piece.loom.openingHeight;
    const corners = [
      [-half, 0],
      [half, 0],
      [half, height],
      [-half, height],
    ] as const;
    const points = corners.map(([x, y], k) => {
      const seen = scene.truth.map(x, y);
      return { x: photoPx(seen.x + 3 * Math.cos(k)), y: photoPx(seen.y - 3 * Math.sin(2 * k)) };
    });
    const located = locateLoom(scene.photo, scene.piece, { marks: fourCorners(points) });
    expect(located.ok).toBe(true);
    if (!located.ok) return;
    expect(located.value.pose.reference.method).toBe('fused');
    expect(errors(located.value.pose, scene)[24]).toBeLessThan(0.4);
  });

  it('refuses corners in a wrong order', async () => {
    const scene = await load('dev01');
    const points = [
      [100, 100],
      [2000, 2800],
      [2000, 100],
      [100, 2800],
    ].map(([x, y]) => ({ x: photoPx(x!), y: photoPx(y!) }));
    const located = locateLoom(scene.photo, scene.piece, { marks: fourCorners(points) });
    expect(!located.ok && located.problem.code).toBe('points-do-not-fit');
  });

  it('names a plan with other ends than the picture', { timeout: 300_000 }, async () => {
    const scene = await load('dev01');
    const piece = { ...scene.piece, warp: { ...scene.piece.warp, ends: 27, firstNotch: 12 } };
    const located = locateLoom(scene.photo, piece);
    expect(!located.ok && located.problem.code).toBe('wrong-count');
  });
});

describe('a lens known from earlier pictures', () => {
  it('takes part where the picture agrees, and says nothing where it shows another', { timeout: 300_000 }, async () => {
    const scene = await load('dev05');
    const first = await locatedAlone('dev05');
    const shown = (first.ok && first.value.pose.reference.lens) as FittedLens;
    expect(shown.k1Sigma).toBeGreaterThan(0);
    const again = locateLoom(scene.photo, scene.piece, { lens: shown });
    expect(again.ok && again.value.pose.reference.parts).toContain('lens known from earlier pictures');
    expect(again.ok && again.value.pose.reference.lens!.k1Sigma).toBeLessThan(shown.k1Sigma);
    const wrong = locateLoom(scene.photo, scene.piece, { lens: { ...shown, k1: shown.k1 - 0.06, k1Sigma: 0.001 } });
    expect(wrong.ok && wrong.value.pose.reference.parts).not.toContain('lens known from earlier pictures');
    expect(wrong.ok && wrong.value.pose.homography).toEqual(first.ok && first.value.pose.homography);
  });
});
