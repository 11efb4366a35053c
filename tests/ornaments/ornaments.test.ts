import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clothMm, grams, metres, mm, radians } from '../../src/core/model/units.ts';
import { type FeltedLeaf, feltedLeaf, leafOutline } from '../../src/core/ornaments/feltedLeaf.ts';
import { ornamentPlans } from '../../src/core/ornaments/ornamentPlans.ts';
import { type WrappedFlower, wrappedFlower } from '../../src/core/ornaments/wrappedFlower.ts';
import { lantern } from '../warp/lantern.ts';

const flower: WrappedFlower = {
  id: 'f1',
  kind: 'wrapped-flower',
  name: 'Buoy flowers',
  at: { x: clothMm(0), y: clothMm(130) },
  yarn: 'y2',
  pegs: 12,
  formerDiameter: mm(60),
  wrapsPerPetal: 2,
  layers: 1,
  count: 3,
};
const leaf: FeltedLeaf = {
  id: 'l1',
  kind: 'felted-leaf',
  name: 'Kelp leaves',
  at: { x: clothMm(40), y: clothMm(60) },
  colour: '#2f7f86',
  length: mm(60),
  width: mm(25),
  thickness: mm(3),
  rotation: radians(0.4),
  count: 2,
};
const piece = {
  ...lantern({ yarn: { label: { metres: metres(160), grams: grams(100) } } }),
  ornaments: [flower, leaf],
};

/** Twice the area of a closed outline, by summing cross products. */
const shoelace = (points: readonly { x: number; y: number }[]) =>
  points.reduce((sum, point, index) => {
    const next = points[(index + 1) % points.length]!;
    return sum + point.x * next.y - next.x * point.y;
  }, 0) / 2;

describe('a wrapped flower', () => {
  it('takes its wraps out and back, its sewing and its tails', () => {
    const figures = wrappedFlower(piece, flower);
    expect(figures.wraps).toBe(24);
    expect(figures.yarnEach).toBeCloseTo((24 * (60 + 2 * Math.PI) + 12 * 30 + 300) / 1000, 9);
    expect(figures.yarn).toBeCloseTo(3 * figures.yarnEach, 12);
  });

  it('has petals no wider than their neighbours allow', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 60 }), fc.integer({ min: 1, max: 20 }), (pegs, wrapsPerPetal) => {
        const figures = wrappedFlower(piece, { ...flower, pegs, wrapsPerPetal });
        expect(figures.petalWidth).toBeLessThanOrEqual(60 * Math.sin(Math.PI / pegs) + 1e-9);
      }),
    );
  });

  it('hands its yarn to the materials and says what holds it', () => {
    const [plan] = ornamentPlans(piece);
    expect(plan?.extras).toEqual([
      { yarn: 'y2', what: 'Buoy flowers, 3 flowers', metres: wrappedFlower(piece, flower).yarn },
    ]);
    expect(plan?.grams).toBeCloseTo(wrappedFlower(piece, flower).yarn / 1.6, 9);
    expect(plan?.heldBy).toContain('either side of an end');
    expect(plan?.place).toMatchObject({ end: 16, verdict: { verdict: 'on-the-cloth' } });
  });
});

describe('a felted leaf', () => {
  it('has the area its outline encloses, whatever its shape and turn', () => {
    const size = fc.double({ min: 5, max: 200, noNaN: true });
    fc.assert(
      fc.property(size, size, fc.double({ min: -4, max: 4, noNaN: true }), (length, width, rotation) => {
        const turned = { ...leaf, length: mm(length), width: mm(width), rotation: radians(rotation) };
        const enclosed = shoelace(leafOutline(turned, 400));
        expect(Math.abs(enclosed / feltedLeaf(turned).area - 1)).toBeLessThan(1e-3);
      }),
    );
  });

  it('as wide as long is a circle', () => {
    expect(feltedLeaf({ ...leaf, length: mm(40), width: mm(40) }).area).toBeCloseTo(Math.PI * 400, 9);
  });

  it('reaches its own length and width', () => {
    const outline = leafOutline({ ...leaf, at: { x: clothMm(0), y: clothMm(0) }, rotation: radians(0) });
    expect(Math.max(...outline.map((point) => point.y))).toBeCloseTo(30, 9);
    expect(Math.max(...outline.map((point) => point.x))).toBeCloseTo(12.5, 9);
  });

  it('weighs its fibre and carries the usual cautions', () => {
    const figures = feltedLeaf(leaf);
    expect(figures.gramsEach).toBeCloseTo((figures.area * 3 * 0.2) / 1000, 12);
    const plan = ornamentPlans(piece)[1];
    const cautions = plan?.cautions.join(' ') ?? '';
    for (const word of ['break', 'straight', 'dust', 'Cut away', 'local rules', 'qualified'])
      expect(cautions).toContain(word);
    expect(plan?.toBuy[0]?.item).toBe('Wool fibre for Kelp leaves');
  });
});

describe('where ornaments sit', () => {
  it('says when one reaches past the edge, or has nothing to hold it', () => {
    const at = (x: number, y: number) =>
      ornamentPlans({ ...piece, ornaments: [{ ...leaf, at: { x: clothMm(x), y: clothMm(y) } }] })[0]?.place.verdict
        .verdict;
    expect(at(0, 60)).toBe('on-the-cloth');
    expect(at(100, 60)).toBe('past-the-edge');
    expect(at(130, 60)).toBe('off-the-cloth');
    expect(at(0, 259)).toBe('past-the-edge');
  });
});
