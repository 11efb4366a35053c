import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Marks } from '../../src/core/model/marks.ts';
import { photoPx } from '../../src/core/model/units.ts';
import type { EarlierLoom } from '../../src/core/photo/earlierLoom.ts';
import type { EarlierReference } from '../../src/core/photo/earlierReference.ts';
import { locateLoom } from '../../src/core/photo/locateLoom.ts';
import { type LoomPose, toLoom } from '../../src/core/photo/loomPose.ts';
import { measureCloth } from '../../src/core/photo/measureCloth.ts';
import { earlierLoomOf, refer, sceneOf, turnedOver } from '../support/earlierScenes.ts';

type Scene = Awaited<ReturnType<typeof sceneOf>>;

/** Errors of a pose over the cloth, mm and in its own sigmas. */
function errors(pose: LoomPose, { piece, truth }: Scene) {
  const half = (piece.warp.ends * piece.loom.notchPitch) / 2;
  return [-half, 0, half].flatMap((x) =>
    [0, 80, 160].map((up) => {
      const y = piece.cloth.baseAboveBottomBar + up;
      const seen = truth.map(x, y);
      const at = toLoom(pose, seen.x, seen.y);
      const sigma = pose.sharedSigma(x, y);
      return {
        mm: Math.hypot(at.x - x, at.y - y),
        z: Math.max(Math.abs(at.x - x) / sigma.x, Math.abs(at.y - y) / sigma.y),
      };
    }),
  );
}

/** Two inner corners across from each other, where truth has them. */
function twoCorners({ piece, truth }: Scene): Marks {
  const half = piece.loom.openingWidth / 2;
  const at = (x: number, y: number) => {
    const seen = truth.map(x, y);
    return { x: photoPx(seen.x), y: photoPx(seen.y) };
  };
  return {
    corners: [at(-half, 0), null, at(half, piece.loom.openingHeight), null],
    lengths: [],
    card: null,
  };
}

describe('a picture whose top bar is cut off, and an earlier check of the same piece', () => {
  let before: Scene;
  let now: Scene;
  let earlier: EarlierLoom;
  beforeAll(async () => {
    [before, now] = [await sceneOf('p6203-a'), await sceneOf('p6203-b')];
    earlier = earlierLoomOf(before.photo, before.piece);
  }, 300_000);

  it('isn’t measured by itself, but from the earlier check, which is named first', { timeout: 300_000 }, () => {
    const referred = refer(now.photo, earlier, now.piece);
    if (!referred.ok) throw new Error(referred.problem.detail);
    // It is asked for only once the picture has been found not to place itself.
    let asked = 0;
    const located = locateLoom(now.photo, now.piece, {
      earlier: () => {
        asked++;
        return referred.value;
      },
    });
    if (!located.ok) throw new Error(located.problem.message.mm);
    expect(asked).toBe(1);
    const { reference } = located.value.pose;
    expect(reference.method).toBe('earlier-check');
    expect(reference.parts[0]).toBe('earlier check of 2026-11-02T09:30:00.000Z');
    for (const { mm, z } of errors(located.value.pose, now)) {
      expect(mm).toBeLessThan(0.6);
      expect(z).toBeLessThan(3);
    }
    const { cloth, elsewhere } = measureCloth(now.photo, now.piece, located.value);
    expect(elsewhere).toBe(false);
    const truth = JSON.parse(readFileSync('tests/fixtures/earlier/p6203-b.truth.json', 'utf8'));
    const seen = cloth.ends.filter(({ fell }) => fell !== null);
    expect(seen.length).toBeGreaterThan(30);
    for (const { index, fell } of seen) {
      const off = fell!.value - truth.ends[index].fell_mm;
      expect(Math.abs(off)).toBeLessThan(1);
      expect(Math.abs(off)).toBeLessThan(3 * fell!.sigma);
    }
  });

  it('isn’t measured from it as a looking-glass shows it', { timeout: 300_000 }, () => {
    expect(refer(turnedOver(now.photo), earlier, now.piece).ok).toBe(false);
  });

  it('isn’t measured from a check of another piece on another loom', { timeout: 300_000 }, async () => {
    const other = await sceneOf('p6200-c');
    expect(refer(other.photo, earlier, now.piece).ok).toBe(false);
  });
});

describe('a picture that shows the whole loom, and an earlier check of the same piece', () => {
  let before: Scene;
  let now: Scene;
  let earlier: EarlierLoom;
  let said: EarlierReference;
  beforeAll(async () => {
    [before, now] = [await sceneOf('p6200-a'), await sceneOf('p6200-c')];
    earlier = earlierLoomOf(before.photo, before.piece);
    const referred = refer(now.photo, earlier, now.piece);
    if (!referred.ok) throw new Error(referred.problem.detail);
    said = referred.value;
  }, 300_000);

  it('isn’t asked about it where it places itself', { timeout: 300_000 }, () => {
    let asked = 0;
    const located = locateLoom(now.photo, now.piece, {
      earlier: () => {
        asked++;
        return said;
      },
    });
    expect(located.ok).toBe(true);
    expect(asked).toBe(0);
  });

  it('takes it into the same fit as one reference more beside marked corners', { timeout: 300_000 }, () => {
    const located = locateLoom(now.photo, now.piece, { marks: twoCorners(now), earlier: () => said });
    if (!located.ok) throw new Error(located.problem.message.mm);
    const { pose, remarks } = located.value;
    expect(pose.reference.method).toBe('fused');
    expect(pose.reference.parts).toContain('both bars');
    expect(pose.reference.parts).toContain('earlier check of 2026-11-02T09:30:00.000Z');
    expect(remarks).toEqual([]);
    for (const { mm, z } of errors(pose, now)) {
      expect(mm).toBeLessThan(0.4);
      expect(z).toBeLessThan(3);
    }
  });

  it('names an earlier check that is out, and measures without it', { timeout: 300_000 }, () => {
    const wrong: EarlierLoom = { ...earlier, camera: { ...earlier.camera, aimY: earlier.camera.aimY + 4 } };
    const shifted = { ...wrong, fells: earlier.fells.map((fell) => (fell === null ? null : fell - 4)) };
    const referred = refer(now.photo, shifted, now.piece);
    if (!referred.ok) throw new Error(referred.problem.detail);
    const located = locateLoom(now.photo, now.piece, { marks: twoCorners(now), earlier: () => referred.value });
    if (!located.ok) throw new Error(located.problem.message.mm);
    expect(located.value.remarks).toHaveLength(1);
    expect(located.value.remarks[0]!.message.mm).toMatch(/^The check of 2026-11-02 is .+ out/);
    expect(located.value.pose.reference.parts.join()).not.toContain('earlier check');
    for (const { mm } of errors(located.value.pose, now)) expect(mm).toBeLessThan(0.4);
  });

  it('isn’t referred to another loom of the same make under the same cloth', { timeout: 300_000 }, async () => {
    const other = await sceneOf('p6200-d');
    expect(refer(other.photo, earlier, other.piece).ok).toBe(false);
  });
});
