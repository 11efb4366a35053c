import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { covers, type Outline, outlinesOf, spansAt } from '../../src/core/cartoon/outline.ts';
import type { Shape, ShapeForm } from '../../src/core/model/piece.ts';
import { clothMm, mm, radians } from '../../src/core/model/units.ts';
import { point, shapeOf } from './shapes.ts';

const cloth = { left: -100, right: 100, bottom: 0, top: 300 };
const only = (shape: Shape): Outline => {
  const outlines = outlinesOf(shape, cloth);
  expect(outlines).toHaveLength(1);
  return outlines[0]!;
};
const areaBySpans = (outline: Outline, step: number): number => {
  let area = 0;
  for (let y = outline.box.bottom + step / 2; y < outline.box.top; y += step) {
    const spans = spansAt(outline, y);
    for (let at = 0; at < spans.length; at += 2) area += (spans[at + 1]! - spans[at]!) * step;
  }
  return area;
};

describe('outlines', () => {
  it('keeps the area of an ellipse and an arch', () => {
    const ellipse = only(shapeOf({ kind: 'ellipse', centre: point(10, 50), radiusX: mm(30), radiusY: mm(20) }));
    expect(areaBySpans(ellipse, 0.01) / (Math.PI * 600)).toBeCloseTo(1, 2.5);
    expect(ellipse.box).toEqual({ left: -20, right: 40, bottom: 30, top: 70 });
    const arch = only(shapeOf({ kind: 'arch', base: point(0, 10), width: mm(40), springing: mm(30), rise: mm(20) }));
    expect(areaBySpans(arch, 0.01) / (40 * 30 + (Math.PI * 20 * 20) / 2)).toBeCloseTo(1, 2.5);
    expect(arch.box).toEqual({ left: -20, right: 20, bottom: 10, top: 60 });
  });

  it('follows a curve to within 0.02 mm', () => {
    const r = 80;
    const k = (4 / 3) * Math.tan(Math.PI / 8) * r;
    const circle: ShapeForm = {
      kind: 'path',
      fillRule: 'nonzero',
      origin: 'drawing',
      commands: [
        { to: 'move', x: r, y: 0 },
        { to: 'cubic', x1: r, y1: k, x2: k, y2: r, x: 0, y: r },
        { to: 'cubic', x1: -k, y1: r, x2: -r, y2: k, x: -r, y: 0 },
        { to: 'cubic', x1: -r, y1: -k, x2: -k, y2: -r, x: 0, y: -r },
        { to: 'cubic', x1: k, y1: -r, x2: r, y2: -k, x: r, y: 0 },
        { to: 'close' },
      ],
    };
    const ring = only(shapeOf(circle)).rings[0]!;
    for (let at = 0; at < ring.length; at += 2) {
      const next = (at + 2) % ring.length;
      const middle = Math.hypot((ring[at]! + ring[next]!) / 2, (ring[at + 1]! + ring[next + 1]!) / 2);
      // The four cubics are themselves 0.03 % off a circle.
      expect(Math.abs(middle - r)).toBeLessThan(0.02 + 0.0003 * r);
    }
  });

  it('spans the cloth with a band, whatever its mirror', () => {
    const outlines = outlinesOf(
      shapeOf({ kind: 'band', from: clothMm(20), to: clothMm(30) }, { mirrorAbout: clothMm(40) }),
      cloth,
    );
    expect(outlines.map((outline) => outline.box)).toEqual([{ left: -100, right: 100, bottom: 20, top: 30 }]);
  });

  it('reaches past both selvedges with a turned band', () => {
    const band = only(shapeOf({ kind: 'band', from: clothMm(140), to: clothMm(160) }, { rotation: radians(0.6) }));
    for (let x = -99; x < 100; x += 3) expect(covers(band, x, 150 + x * Math.tan(0.6))).toBe(true);
    expect(covers(band, 0, 100)).toBe(false);
  });

  it('turns about the middle of its own box', () => {
    const form: ShapeForm = { kind: 'polygon', points: [point(0, 0), point(40, 0), point(40, 20), point(0, 20)] };
    const box = only(shapeOf(form, { rotation: radians(Math.PI / 2) })).box;
    expect(box.left).toBeCloseTo(10);
    expect(box.right).toBeCloseTo(30);
    expect(box.bottom).toBeCloseTo(-10);
    expect(box.top).toBeCloseTo(30);
  });

  it('mirrors the repeats too, so the whole is symmetric', () => {
    const form: ShapeForm = { kind: 'polygon', points: [point(10, 0), point(20, 0), point(15, 9)] };
    const outlines = outlinesOf(
      shapeOf(form, { mirrorAbout: clothMm(0), repeat: { copies: 2, dx: mm(25), dy: mm(5) } }),
      cloth,
    );
    expect(outlines).toHaveLength(6);
    const lefts = outlines.map((outline) => outline.box.left);
    expect(lefts).toEqual([10, 35, 60, -20, -45, -70]);
    expect(outlines.map((outline) => outline.box.bottom)).toEqual([0, 5, 10, 0, 5, 10]);
  });

  it('fills by nonzero and evenodd', () => {
    const square = (size: number) =>
      [
        { to: 'move', x: -size, y: -size },
        { to: 'line', x: size, y: -size },
        { to: 'line', x: size, y: size },
        { to: 'line', x: -size, y: size },
        { to: 'close' },
      ] as const;
    const path = (fillRule: 'nonzero' | 'evenodd'): ShapeForm => ({
      kind: 'path',
      fillRule,
      origin: 'drawing',
      commands: [...square(10), ...square(4)],
    });
    expect([...spansAt(only(shapeOf(path('nonzero'))), 0)]).toEqual([-10, 10]);
    expect([...spansAt(only(shapeOf(path('evenodd'))), 0)]).toEqual([-10, -4, 4, 10]);
    expect(covers(only(shapeOf(path('evenodd'))), 0, 0)).toBe(false);
  });

  it('shares an edge without overlap or gap', () => {
    const whole = fc.integer({ min: -40, max: 40 });
    fc.assert(
      fc.property(fc.array(whole, { minLength: 8, maxLength: 8 }), whole, whole, (corners, x, y) => {
        const [a, b, c, d] = [0, 2, 4, 6].map((at) => point(corners[at]!, corners[at + 1]!));
        const inside = (points: ReturnType<typeof point>[]) =>
          outlinesOf(shapeOf({ kind: 'polygon', points }), cloth).some((outline) => covers(outline, x, y)) ? 1 : 0;
        const cross = (p: typeof a, q: typeof a, r: typeof a) =>
          (q!.x - p!.x) * (r!.y - p!.y) - (q!.y - p!.y) * (r!.x - p!.x);
        // Two triangles on either side of the edge a–c.
        fc.pre(cross(a, c, b) > 0 && cross(a, c, d) < 0);
        const quad = outlinesOf(shapeOf({ kind: 'polygon', points: [a!, d!, c!, b!] }), cloth);
        const together = quad.some((outline) => covers(outline, x, y)) ? 1 : 0;
        expect(inside([a!, c!, b!]) + inside([c!, a!, d!])).toBe(together);
      }),
      { numRuns: 5000 },
    );
  });

  it('says the same by spans and by points', () => {
    const whole = fc.integer({ min: -30, max: 30 });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(whole, whole), { minLength: 3, maxLength: 12 }),
        fc.constantFrom('nonzero' as const, 'evenodd' as const),
        whole,
        (corners, fillRule, y) => {
          const commands = corners.map(([x, level], at) => ({
            to: at === 0 ? ('move' as const) : ('line' as const),
            x,
            y: level,
          }));
          for (const outline of outlinesOf(shapeOf({ kind: 'path', commands, fillRule, origin: 'drawing' }), cloth)) {
            const spans = spansAt(outline, y);
            for (let x = -31; x <= 31; x++) {
              let within = false;
              for (let at = 0; at < spans.length; at += 2) within ||= spans[at]! <= x && x < spans[at + 1]!;
              expect(covers(outline, x, y)).toBe(within);
            }
            for (let at = 1; at < spans.length; at++) expect(spans[at]!).toBeGreaterThan(spans[at - 1]!);
          }
        },
      ),
      { numRuns: 500 },
    );
  });

  it('mirrors to the last bit about the middle', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.double({ min: -90, max: 90, noNaN: true }), fc.double({ min: 0, max: 200, noNaN: true })),
          {
            minLength: 3,
            maxLength: 8,
          },
        ),
        fc.double({ min: 0, max: 200, noNaN: true }),
        (corners, y) => {
          const [plain, image] = outlinesOf(
            shapeOf(
              { kind: 'polygon', points: corners.map(([x, level]) => point(x, level)) },
              { mirrorAbout: clothMm(0) },
            ),
            cloth,
          );
          fc.pre(plain !== undefined && image !== undefined);
          const back = [...spansAt(image!, y)].map((x) => 0 - x).reverse();
          expect(back).toEqual([...spansAt(plain!, y)].map((x) => 0 + x));
        },
      ),
    );
  });
});
