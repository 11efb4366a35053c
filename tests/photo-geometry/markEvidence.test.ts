import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inBothUnits } from '../../src/core/model/bothUnits.ts';
import { fourCorners, type Marks } from '../../src/core/model/marks.ts';
import { mm, type PhotoPoint, photoPx } from '../../src/core/model/units.ts';
import { agreeing, type Reference } from '../../src/core/photo/agreeingMarks.ts';
import {
  type Camera,
  cameraProjection,
  cameraSteps,
  cameraToVector,
  lensOf,
  projectPoint,
} from '../../src/core/photo/camera.ts';
import { usualCamera, usualWood } from '../../src/core/photo/coarseCamera.ts';
import type { Expected } from '../../src/core/photo/expected.ts';
import { toLoom } from '../../src/core/photo/loomPose.ts';
import {
  cardEvidence,
  cornerEvidence,
  heldLevel,
  lengthEvidence,
  type MarkedPicture,
  openingCorners,
  roughlyAt,
} from '../../src/core/photo/markEvidence.ts';
import { markedReferences } from '../../src/core/photo/markedReferences.ts';
import { firstByMarks } from '../../src/core/photo/marksCamera.ts';
import { distanceFromFit, mostDistance, type PoseEvidence } from '../../src/core/photo/poseEvidence.ts';
import { FITTED, fitPose, type PoseFit, poseOf } from '../../src/core/photo/poseFit.ts';
import { sharedSigmaOf } from '../../src/core/photo/poseSigma.ts';
import { median } from '../../src/core/photo/statistics.ts';

const size = { width: 2000, height: 2600 };
const expected: Expected = {
  pitch: 6.35,
  notches: 51,
  openingWidth: 330,
  openingHeight: 400,
  bar: 28,
  rail: 28,
  depth: 18,
  ends: 31,
  firstNotch: 10,
  stringDiameter: 1.7,
  stringsPerEnd: 2,
  base: 60,
};
const camera = (change: Partial<Camera> = {}): Camera => ({
  turn: [0.05, -0.04, 0.1],
  aimX: 6,
  aimY: 190,
  logDistance: Math.log(640),
  logFocal: Math.log(0.8 * size.height),
  k1: -0.01,
  k2: 0,
  ...change,
});
const picture: MarkedPicture = { size, mirrored: false, expected, mmPerPx: 640 / (0.8 * size.height) };

/** Where a camera shows a loom point, with the click a given way beside it. */
const clickOf =
  (of: Camera, mirrored = false) =>
  (x: number, y: number, z = 0, off: readonly [number, number] = [0, 0]): PhotoPoint => {
    const seen = projectPoint(cameraProjection(of, size, mirrored), lensOf(of, size), x, y, z);
    return { x: photoPx(seen.x + off[0]), y: photoPx(seen.y + off[1]) };
  };
const cornersOf = (of: Camera, which: readonly number[], off: () => readonly [number, number] = () => [0, 0]) =>
  openingCorners(expected).map(({ x, y }, k) => (which.includes(k) ? clickOf(of)(x, y, 0, off()) : null));
/** A card's corners, its lower left one at a place on the warp and the card turned by so many degrees. */
const cardOf = (
  of: Camera,
  x: number,
  y: number,
  degrees: number,
  size = 1,
  off: () => readonly [number, number] = () => [0, 0],
) => {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const z = expected.stringDiameter / 2 + 0.76;
  const round = [
    [0, 0],
    [85.6, 0],
    [85.6, 53.98],
    [0, 53.98],
  ] as const;
  return round.map(([u, v]) => clickOf(of)(x + size * (c * u - s * v), y + size * (s * u + c * v), z, off()));
};
const parametersOf = (of: Camera) => [...cameraToVector(of), ...usualWood];
/** One-pixel noise, the same every time: normal figures from a fixed row. */
function noise(seed: number): () => readonly [number, number] {
  let state = seed;
  const next = () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return () => {
    const [r, a] = [Math.sqrt(-2 * Math.log(next())), 2 * Math.PI * next()];
    return [r * Math.cos(a), r * Math.sin(a)];
  };
}

describe('what marks say of a camera', () => {
  it('is nothing against the camera that took the picture, wherever and however the card lies', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -80, max: 0, noNaN: true }),
        fc.double({ min: 200, max: 300, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.boolean(),
        fc.nat(3),
        (x, y, degrees, backwards, first) => {
          const of = camera();
          const round = cardOf(of, x, y, degrees);
          const from = [...round.slice(first), ...round.slice(0, first)];
          const evidence = cardEvidence(backwards ? [...from].reverse() : from, picture);
          // Half a thousandth of the card by which a slanted view sees its height otherwise than straight from above.
          expect(evidence.outMm(parametersOf(of))).toBeLessThan(0.06);
          expect(Math.max(...evidence.misfits(parametersOf(of)).map(Math.abs))).toBeLessThan(0.3);
        },
      ),
    );
  });

  it('says by how many millimetres a length, a corner or a card is out', () => {
    const of = camera();
    const z = expected.stringDiameter / 2;
    const click = clickOf(of);
    const length = lengthEvidence(click(-60, 250, z), click(60, 250, z), 123, picture);
    expect(length.outMm(parametersOf(of))).toBeCloseTo(3, 1);
    expect(cornerEvidence(click(165, 404), 2, picture).outMm(parametersOf(of))).toBeCloseTo(4, 2);
    expect(cardEvidence(cardOf(of, -40, 250, 15, 1.05), picture).outMm(parametersOf(of))).toBeCloseTo(0.05 * 85.6, 1);
  });

  it('has a limit that three sigmas by one figure would have', () => {
    // Upper 0.27 % points of chi-square with 1, 2, 5 and 8 degrees of freedom (tables of chi-square).
    for (const [freedom, limit] of [
      [1, 9],
      [2, 11.83],
      [5, 18.21],
      [8, 23.57],
    ] as const) {
      expect(Math.abs(mostDistance(freedom) / limit - 1)).toBeLessThan(0.02);
    }
  });
});

const prior = usualCamera(size);
const fitWith =
  (start: Camera) =>
  (evidence: readonly PoseEvidence[]): PoseFit =>
    fitPose([], start, usualWood, { ...prior, k1Sigma: 0.02 }, size, false, [heldLevel, roughlyAt(start), ...evidence]);
const fitted = (marks: Marks) => {
  const first = firstByMarks(marks, expected, prior, size, false);
  if (!first.ok) throw new Error(first.problem.message.mm);
  const references = markedReferences(marks, picture);
  return { references, together: fitWith(first.value.camera) };
};
/** Places over the cloth, loom mm. */
const places = [-90, 0, 90].flatMap((x) => [60, 200, 340].map((y) => [x, y] as const));
const farthest = (pose: ReturnType<typeof poseOf>, of: Camera): number =>
  Math.max(
    ...places.map(([x, y]) => {
      const seen = clickOf(of)(x, y);
      const got = toLoom(pose, seen.x, seen.y);
      return Math.hypot(got.x - x, got.y - y);
    }),
  );

describe('a camera from marks alone', () => {
  it('is right within its own sigmas with clicks a pixel out: four corners, a card and a length', () => {
    const found = [1, 2, 3, 4, 5, 6, 7, 8].map((seed) => {
      const off = noise(seed);
      const of = camera({ turn: [0.02 * seed - 0.08, 0.05 - 0.02 * seed, seed] });
      const z = expected.stringDiameter / 2;
      const marks: Marks = {
        corners: cornersOf(of, [0, 1, 2, 3], off),
        lengths: [{ from: clickOf(of)(-60, 250, z, off()), to: clickOf(of)(60, 250, z, off()), length: mm(120) }],
        card: cardOf(of, -40, 260, 15, 1, off),
      };
      const { references, together } = fitted(marks);
      const agreed = agreeing(references, together, 0);
      if (!agreed.ok) throw new Error(agreed.problem.message.mm);
      expect(agreed.value.remarks).toEqual([]);
      const { camera: got, covariance } = agreed.value.fit;
      const sigma = sharedSigmaOf(got, covariance, FITTED, size, false, { x: 0, y: 0 });
      const off3 = places.map(([x, y]) => {
        const seen = clickOf(of)(x, y);
        const at = toLoom(poseOf(cameraToVector(got), size, false), seen.x, seen.y);
        return Math.max(Math.abs(at.x - x) / sigma(x, y).x, Math.abs(at.y - y) / sigma(x, y).y);
      });
      return { inSigmas: Math.max(...off3), mm: farthest(poseOf(cameraToVector(got), size, false), of) };
    });
    expect(Math.max(...found.map(({ inSigmas }) => inSigmas))).toBeLessThan(3);
    expect(median(found.map((one) => one.mm))).toBeLessThan(0.8);
  });

  it('is as unsure as its marks are few', () => {
    const of = camera();
    const unsure = (which: readonly number[]) => {
      const { references, together } = fitted({ ...fourCorners(cornersOf(of, which) as PhotoPoint[]) });
      const { covariance } = together(references.map(({ evidence }) => evidence));
      return Math.sqrt(covariance[0]! + covariance[FITTED + 1]!);
    };
    const [two, three, four] = [unsure([0, 1]), unsure([0, 1, 2]), unsure([0, 1, 2, 3])];
    expect(two).toBeGreaterThan(three);
    expect(three).toBeGreaterThan(four);
    expect(four).toBeLessThan(0.03);
  });

  it('names corners in one line or too near each other, and one alone', () => {
    const at = (x: number, y: number): PhotoPoint => ({ x: photoPx(x), y: photoPx(y) });
    const tag = (corners: Marks['corners']) => {
      const first = firstByMarks({ corners, lengths: [], card: null }, expected, prior, size, false);
      return first.ok ? 'placed' : first.problem.code;
    };
    expect(tag([at(200, 2400), null, null, null])).toBe('points-do-not-fit');
    expect(tag([at(200, 2400), at(260, 2380), null, null])).toBe('points-do-not-fit');
    expect(tag([at(200, 2400), at(1000, 1400), at(1800, 400), null])).toBe('points-do-not-fit');
    expect(tag([at(200, 2400), at(1800, 2400), null, null])).toBe('placed');
  });

  it('sees by three corners that a picture shows left for right', () => {
    const of = camera();
    const mirrored = openingCorners(expected).map(({ x, y }, k) => (k === 3 ? null : clickOf(of, true)(x, y)));
    const first = firstByMarks({ corners: mirrored, lengths: [], card: null }, expected, prior, size, false);
    expect(first.ok && first.value.mirrored).toBe(true);
    const upright = firstByMarks(
      { corners: cornersOf(of, [0, 1, 2]), lengths: [], card: null },
      expected,
      prior,
      size,
      true,
    );
    expect(upright.ok && upright.value.mirrored).toBe(false);
  });
});

describe('references that disagree', () => {
  const of = camera({ turn: [0.02, 0.01, 0.1] });
  const z = expected.stringDiameter / 2;
  const length = (given: number) => ({
    from: clickOf(of)(-60, 250, z),
    to: clickOf(of)(60, 250, z),
    length: mm(given),
  });
  const given = (marks: Partial<Marks>) => {
    const { references, together } = fitted({
      corners: cornersOf(of, [0, 1, 2, 3]),
      lengths: [],
      card: null,
      ...marks,
    });
    return agreeing(references, together, 0);
  };

  it('are named with how far they are out, and left out where all else agrees', () => {
    const agreed = given({ lengths: [length(126)], card: cardOf(of, -40, 260, 15) });
    expect(agreed.ok && agreed.value.remarks.map(({ code, message }) => [code, message.mm])).toEqual([
      ['references-disagree', expect.stringMatching(/^The length of 126\.0 mm is [56]\.\d mm out .* was left out\.$/)],
    ]);
    // The same figures in inches, not the millimetres turned into them.
    expect(agreed.ok && agreed.value.remarks[0]!.message.in).toMatch(
      /^The length of 4 .* in is .* in out .* was left out\.$/,
    );
    expect(agreed.ok && agreed.value.used.map(({ kind }) => kind)).toEqual([
      'corner',
      'corner',
      'corner',
      'corner',
      'card',
    ]);
    expect(agreed.ok && farthest(poseOf(cameraToVector(agreed.value.fit.camera), size, false), of)).toBeLessThan(0.7);
  });

  it('stay in where the difference is within what clicks leave open', () => {
    const agreed = given({ lengths: [length(120.4)], card: cardOf(of, -40, 260, 15) });
    expect(agreed.ok && agreed.value.remarks).toEqual([]);
  });

  it('are not settled where one word stands against another', () => {
    const ruler: Reference = {
      kind: 'length',
      name: inBothUnits(() => 'The length of 126 mm'),
      evidence: lengthEvidence(length(126).from, length(126).to, 126, picture),
    };
    const start = camera({ turn: [0.02, 0.01, 0.1] });
    const known = (k: number) => cornerEvidence(cornersOf(of, [k])[k]!, k, picture);
    // One witness, the picture's own, that holds the camera fast.
    const shown = (evidence: readonly PoseEvidence[]) =>
      fitWith(start)([known(0), known(1), known(2), known(3), ...evidence]);
    const one = agreeing([ruler], shown, 1);
    expect(!one.ok && one.problem.code).toBe('references-disagree');
    expect(!one.ok && one.problem.message.mm).toMatch(/^The length of 126 mm and the rest .* by [56]\.\d mm/);
    // Two witnesses that agree are believed against it.
    const two = agreeing([ruler], shown, 2);
    expect(two.ok && two.value.used).toEqual([]);
    expect(two.ok && two.value.remarks).toHaveLength(1);
  });

  it('are as often out by chance as the limit says, and no oftener', () => {
    let out = 0;
    const rounds = 300;
    for (let seed = 1; seed <= rounds; seed++) {
      const off = noise(seed * 7);
      // Clicks as unsure as they are said to be: a pixel, with the corners' own play and the card's.
      const far = 0.5 / picture.mmPerPx;
      const corner = () => {
        const [a, b] = [off(), off()];
        return [1.3 * a[0] + far * b[0], 1.3 * a[1] + far * b[1]] as const;
      };
      const { references, together } = fitted({
        corners: cornersOf(of, [0, 1, 2, 3], corner),
        lengths: [],
        card: null,
      });
      const card = cardEvidence(cardOf(of, -40, 260, 15, 1, off), picture);
      const without = together(references.map(({ evidence }) => evidence));
      const v = Float64Array.of(...cameraToVector(without.camera), ...without.wood);
      const distance = distanceFromFit(card, v, without.covariance, cameraSteps, FITTED);
      if (distance > mostDistance(card.freedom)) out++;
    }
    expect(out).toBeLessThan(0.02 * rounds);
  });
});
