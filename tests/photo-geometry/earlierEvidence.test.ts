import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Camera, cameraFromVector, cameraSteps, cameraToVector } from '../../src/core/photo/camera.ts';
import { usualCamera, usualWood, type WoodShape } from '../../src/core/photo/coarseCamera.ts';
import { placesEvidence, reducedEvidence, type SharedPlace } from '../../src/core/photo/earlierEvidence.ts';
import type { LookAlike } from '../../src/core/photo/earlierLoom.ts';
import type { Expected } from '../../src/core/photo/expected.ts';
import { mapOf } from '../../src/core/photo/firstLook.ts';
import { cholesky } from '../../src/core/photo/leastSquares.ts';
import { cameraByLookAlikes } from '../../src/core/photo/lookAlikes.ts';
import { cellZones, faceHeight, loomCells } from '../../src/core/photo/loomCells.ts';
import { toLoom } from '../../src/core/photo/loomPose.ts';
import { FITTED, fitPose, poseOf } from '../../src/core/photo/poseFit.ts';
import { sharedSigmaOf } from '../../src/core/photo/poseSigma.ts';

const size = { width: 1500, height: 2000 };
const photo = { ...size, rgb: new Uint8Array(0) };
const expected: Expected = {
  pitch: 6,
  notches: 50,
  openingWidth: 300,
  openingHeight: 380,
  bar: 28,
  rail: 28,
  depth: 18,
  ends: 32,
  firstNotch: 9,
  stringDiameter: 1.6,
  stringsPerEnd: 1,
  base: 40,
};
const cells = loomCells(
  expected,
  Array.from({ length: expected.ends }, () => 130),
);
const camera = (change: Partial<Camera> = {}): Camera => ({
  turn: [0.06, -0.05, 0.04],
  aimX: 4,
  aimY: 180,
  logDistance: Math.log(620),
  logFocal: Math.log(0.83 * size.height),
  k1: 0.02,
  k2: 0,
  ...change,
});
const later = camera({ turn: [-0.1, 0.08, -0.05], aimX: 60, aimY: 150, logDistance: Math.log(520) });

/** Normal figures, the same every time. */
function normal(seed: number): () => number {
  let state = seed;
  const next = () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
}

/** Where two cameras see places of the loom; faces, cloth and matching err by so many of their sigmas. */
function seenByBoth(before: Camera, now: Camera, err: () => number, wood: WoodShape = usualWood): SharedPlace[] {
  const [seenBefore, seenNow] = [mapOf(before, size, false), mapOf(now, size, false)];
  const heights = new Map(
    cellZones.map((zone) => {
      const { z, sigma } = faceHeight(zone, expected, wood);
      return [zone, z + sigma * err()] as const;
    }),
  );
  const moved = { x: 0.3 * err(), y: 0.3 * err() };
  return cells.flatMap(({ zone, x, y }): SharedPlace[] => {
    const z = heights.get(zone)!;
    const at = seenNow(x, y, z);
    if (at.x < 0 || at.y < 0 || at.x > size.width || at.y > size.height) return [];
    return [[1, 0] as const, [0, 1] as const].map(([ux, uy]): SharedPlace => {
      const sigma = 0.05 + 0.05 * ux;
      const aside = sigma * err();
      const cloth = zone === 'cloth' ? 1 : 0;
      const there = seenBefore(x, y, z);
      const here = seenNow(x + ux * aside + cloth * moved.x, y + uy * aside + cloth * moved.y, z);
      return { zone, before: { px: there.x, py: there.y }, now: { px: here.x, py: here.y }, ux, uy, sigma };
    });
  });
}

/** A covariance as a good check leaves it: some tenths of a millimetre, the rails' depth known to half one. */
const covariance = (() => {
  const sigmas = [4e-4, 4e-4, 2e-4, 0.12, 0.15, 6e-4, 1e-3, 1e-3, 1e-5, 0.3, 0.3, 0.5];
  return Float64Array.from({ length: FITTED * FITTED }, (_, k) =>
    k % (FITTED + 1) === 0 ? sigmas[k / (FITTED + 1)]! ** 2 : 0,
  );
})();
const earlier = (before: Camera, wood = usualWood) => ({ photo, camera: before, wood, covariance, mirrored: false });
const parameters = (of: Camera) => Float64Array.of(...cameraToVector(of), ...usualWood);
const spans = [1, 1, 1, 300, 300, 1, 0.25, 0.05, 1e-4];

describe('places that two photographs share', () => {
  it('are nothing out under the cameras that took them, wherever those stood', () => {
    const angle = fc.double({ min: -0.15, max: 0.15, noNaN: true });
    fc.assert(
      fc.property(angle, angle, angle, fc.double({ min: -60, max: 60, noNaN: true }), (a, b, c, x) => {
        const now = camera({ turn: [a, b, c], aimX: x });
        const places = seenByBoth(camera(), now, () => 0);
        const evidence = placesEvidence(places, earlier(camera()), expected, size, false, now)!;
        expect(Math.max(...evidence.out(parameters(now)).map(Math.abs))).toBeLessThan(1e-6);
        const fit = fitPose([], camera({ turn: [0, 0, 0] }), usualWood, usualCamera(size), photo, false, [evidence]);
        const [from, pose] = [mapOf(now, size, false), poseOf(parameters(fit.camera), size, false)];
        for (const { x, y } of cells) {
          const seen = from(x, y);
          const at = toLoom(pose, seen.x, seen.y);
          expect(Math.hypot(at.x - x, at.y - y)).toBeLessThan(0.1);
        }
      }),
      { numRuns: 15 },
    );
  });

  it('give a pose whose sigmas are honest: matching, the earlier pose, faces and cloth all err', () => {
    const next = normal(4711);
    const factor = cholesky(covariance, FITTED)!;
    let [squares, count] = [0, 0];
    for (let trial = 0; trial < 40; trial++) {
      const errors = Array.from({ length: FITTED }, next);
      const astray = Float64Array.from({ length: FITTED }, (_, i) =>
        errors.reduce((sum, value, k) => sum + (k <= i ? factor[i * FITTED + k]! * value : 0), 0),
      );
      const told = cameraFromVector(cameraToVector(camera()).map((value, i) => value + astray[i]!));
      const places = seenByBoth(camera(), later, next, [usualWood[0], usualWood[1], usualWood[2] + astray[11]!]);
      const evidence = placesEvidence(places, earlier(told), expected, size, false, later)!;
      const reduced = reducedEvidence(evidence, parameters(later), spans);
      const fit = fitPose([], later, usualWood, usualCamera(size), photo, false, [reduced]);
      const sigma = sharedSigmaOf(fit.camera, fit.covariance, FITTED, size, false, { x: 0, y: 0 });
      const [from, pose] = [mapOf(later, size, false), poseOf(parameters(fit.camera), size, false)];
      for (const [x, y] of [
        [-90, 50],
        [90, 50],
        [0, 200],
      ] as const) {
        const seen = from(x, y);
        const at = toLoom(pose, seen.x, seen.y);
        squares += ((at.x - x) / sigma(x, y).x) ** 2 + ((at.y - y) / sigma(x, y).y) ** 2;
        count += 2;
      }
    }
    const z = Math.sqrt(squares / count);
    expect(z).toBeGreaterThan(0.7);
    expect(z).toBeLessThan(1.3);
  });

  it('say the same in a few figures as in all of them', () => {
    const places = seenByBoth(camera(), later, normal(5));
    const evidence = placesEvidence(places, earlier(camera()), expected, size, false, later)!;
    const reduced = reducedEvidence(evidence, parameters(later), spans);
    expect(reduced.freedom).toBeLessThanOrEqual(9);
    const fits = [evidence, reduced].map((one) =>
      fitPose([], later, usualWood, usualCamera(size), photo, false, [one]),
    );
    const vectors = fits.map((fit) => cameraToVector(fit.camera));
    cameraSteps.forEach((_, i) => {
      const sigma = Math.sqrt(fits[0]!.covariance[i * FITTED + i]!);
      expect(Math.abs(vectors[0]![i]! - vectors[1]![i]!)).toBeLessThan(0.2 * sigma);
      expect(Math.sqrt(fits[1]!.covariance[i * FITTED + i]!) / sigma).toBeCloseTo(1, 1);
    });
  });
});

describe('look-alikes', () => {
  const prior = usualCamera(size);
  /** True ones as a camera sees them, to a pixel, and so many false ones for each. */
  function alike(of: Camera, falseOnes: number, seed: number, mirrored = false): LookAlike[] {
    const next = normal(seed);
    const map = mapOf(of, size, mirrored);
    return cells.flatMap(({ zone, x, y }): LookAlike[] => {
      const { z } = faceHeight(zone, expected, usualWood);
      const seen = map(x, y, z);
      const aside = Array.from({ length: falseOnes }, () => ({
        x,
        y,
        z,
        px: 750 + 400 * next(),
        py: 1000 + 500 * next(),
      }));
      return [{ x, y, z, px: seen.x + next(), py: seen.y + next() }, ...aside];
    });
  }

  it('give the camera though two of three are false', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.double({ min: -0.12, max: 0.12, noNaN: true }),
        (seed, slant) => {
          const of = camera({ turn: [slant, -slant, slant / 2] });
          const found = cameraByLookAlikes(alike(of, 2, seed), expected, prior, size, false)!;
          const [from, pose] = [mapOf(of, size, false), poseOf(parameters(found.camera), size, false)];
          for (const { x, y } of cells) {
            const seen = from(x, y);
            const at = toLoom(pose, seen.x, seen.y);
            expect(Math.hypot(at.x - x, at.y - y)).toBeLessThan(1.5);
          }
        },
      ),
      { numRuns: 8 },
    );
  });

  it('of a mirror image, or false all of them, give none', () => {
    expect(cameraByLookAlikes(alike(camera(), 0, 3, true), expected, prior, size, false)).toBeNull();
    const none = alike(camera(), 3, 8).filter((_, k) => k % 4 !== 0);
    expect(cameraByLookAlikes(none, expected, prior, size, false)).toBeNull();
  });
});
