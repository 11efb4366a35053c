import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlineArea, shapeArea, signedRingArea } from '../../src/core/cartoon/area.ts';
import { withTurnWorkedIn } from '../../src/core/cartoon/formCommands.ts';
import { freehandForm } from '../../src/core/cartoon/freehand.ts';
import { nearestEdge, shapeAt } from '../../src/core/cartoon/hit.ts';
import { mirrorImage, separateCopies, setMirror, setRepeat } from '../../src/core/cartoon/mirror.ts';
import { freeName, newShape, startingForms } from '../../src/core/cartoon/newShape.ts';
import { covers, outlinesOf } from '../../src/core/cartoon/outline.ts';
import { moveShape, resizeShape, rotateShape, scaleShape } from '../../src/core/cartoon/place.ts';
import { shapeBox } from '../../src/core/cartoon/shapeBox.ts';
import {
  fitShapeToGrid,
  nudgeShape,
  snapCorner,
  snapShape,
  snapToEndEdge,
  snapToTurn,
} from '../../src/core/cartoon/snap.ts';
import { restack } from '../../src/core/cartoon/stack.ts';
import { deleteVertex, insertVertex, moveVertex, verticesOf } from '../../src/core/cartoon/vertices.ts';
import type { Shape, ShapeForm } from '../../src/core/model/piece.ts';
import { clothMm, mm, radians } from '../../src/core/model/units.ts';
import { point, shapeOf } from './shapes.ts';

const cloth = { left: -104.775, right: 104.775, bottom: 0, top: 260 };
const grid = { ends: 33, pitch: 6.35, passHeight: 1.06 };

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyForm: fc.Arbitrary<ShapeForm> = fc.oneof(
  fc
    .tuple(number(-50, 50), number(20, 150), number(5, 40), number(5, 40))
    .map(([x, y, rx, ry]): ShapeForm => ({ kind: 'ellipse', centre: point(x, y), radiusX: mm(rx), radiusY: mm(ry) })),
  fc.tuple(number(-50, 50), number(20, 150), number(10, 60), number(0, 40), number(5, 40)).map(
    ([x, y, width, springing, rise]): ShapeForm => ({
      kind: 'arch',
      base: point(x, y),
      width: mm(width),
      springing: mm(springing),
      rise: mm(rise),
    }),
  ),
  fc
    .tuple(number(0, 100), number(5, 60))
    .map(([from, tall]): ShapeForm => ({ kind: 'band', from: clothMm(from), to: clothMm(from + tall) })),
  fc
    .array(fc.tuple(number(-90, 90), number(0, 200)), { minLength: 3, maxLength: 7 })
    .map((corners): ShapeForm => ({ kind: 'polygon', points: corners.map(([x, y]) => point(x, y)) })),
);
const anyShape = fc.tuple(anyForm, number(-3, 3)).map(([form, turn]) => shapeOf(form, { rotation: radians(turn) }));
const inShape = (shape: Shape, x: number, y: number) =>
  outlinesOf(shape, cloth).some((outline) => covers(outline, x, y));
/** Near an edge, rounding decides; such points say nothing. */
const clearOf = (shape: Shape, x: number, y: number) =>
  (nearestEdge(outlinesOf(shape, cloth), x, y)?.distance ?? 9) > 0.05;

describe('placing', () => {
  it('holds the anchor still while growing, however the shape is turned', () => {
    fc.assert(
      fc.property(anyShape, number(0.3, 3), number(0.3, 3), number(-80, 80), number(0, 200), (shape, sx, sy, x, y) => {
        fc.pre(shape.form.kind !== 'band' && clearOf(shape, x, y));
        const box = shapeBox({ ...shape, rotation: radians(0) }, cloth);
        fc.pre(box !== null && box.right - box.left > 5 && box.top - box.bottom > 5);
        const grown = scaleShape(shape, sx, sy, { x, y }, cloth);
        expect(inShape(grown, x, y)).toBe(inShape(shape, x, y));
        const area = shapeArea(shape, cloth) * sx * sy;
        expect(Math.abs(shapeArea(grown, cloth) - area)).toBeLessThan(0.5 + 0.01 * area);
      }),
      { numRuns: 300 },
    );
  });

  it('takes the sizes a weaver types', () => {
    const hexagon = newShape('hexagon', 'a', 'y1', grid, cloth, []);
    const sized = resizeShape(hexagon, { width: 120, height: 180, bottom: 40 }, cloth);
    const box = shapeBox(sized, cloth)!;
    expect(box.left).toBeCloseTo(-60);
    expect(box.right).toBeCloseTo(60);
    expect(box.bottom).toBeCloseTo(40);
    expect(box.top).toBeCloseTo(220);
  });

  it('never makes a shape smaller than can be taken hold of', () => {
    const ellipse = newShape('ellipse', 'a', 'y1', grid, cloth, []);
    for (const share of [0, -2, 1e-9, Number.NaN]) {
      const box = shapeBox(scaleShape(ellipse, share, share, point(0, 0), cloth), cloth)!;
      expect(box.right - box.left).toBeGreaterThanOrEqual(0.999);
    }
  });

  it('turns and turns back', () => {
    const shape = rotateShape(rotateShape(shapeOf({ kind: 'band', from: clothMm(1), to: clothMm(2) }), 2), 2);
    expect(shape.rotation).toBeCloseTo(4 - 2 * Math.PI);
    expect(rotateShape(shape, -4).rotation).toBeCloseTo(0);
  });

  it('snaps to ends and whole turns', () => {
    for (const kind of startingForms) {
      const shape = moveShape(newShape(kind, 'a', 'y1', grid, cloth, []), 2.2, 0.7);
      const box = shapeBox(fitShapeToGrid(shape, grid, cloth), cloth)!;
      for (const x of [box.left, box.right]) expect(x).toBeCloseTo(snapToEndEdge(x, grid), 9);
      for (const y of [box.bottom, box.top]) expect(y).toBeCloseTo(snapToTurn(y, grid), 9);
      const moved = shapeBox(snapShape(shape, grid, cloth), cloth)!;
      expect(moved.bottom).toBeCloseTo(snapToTurn(moved.bottom, grid), 9);
    }
    // 33 ends: edges of ends lie half a pitch off the middle.
    expect(snapToEndEdge(0.1, grid)).toBeCloseTo(3.175);
    expect(snapToEndEdge(0.1, { ...grid, ends: 32 })).toBeCloseTo(0);
    // A box is drawn from between two ends to between two ends, wherever it is pressed and let go.
    fc.assert(
      fc.property(number(-100, 100), number(0, 260), fc.constantFrom(32, 33), (x, y, ends) => {
        const corner = snapCorner(x, y, { ...grid, ends });
        const passed = corner.x / grid.pitch + ends / 2;
        expect(passed).toBeCloseTo(Math.round(passed), 9);
        expect(Math.abs(corner.x - x)).toBeLessThan(grid.pitch / 2 + 1e-9);
      }),
    );
  });

  it('nudges by one end and one turn', () => {
    const shape = newShape('diamond', 'a', 'y1', grid, cloth, []);
    const before = shapeBox(shape, cloth)!;
    const after = shapeBox(nudgeShape(shape, -1, 5, grid), cloth)!;
    expect(after.left - before.left).toBeCloseTo(-6.35);
    expect(after.bottom - before.bottom).toBeCloseTo(10.6);
  });

  it('starts new shapes symmetric, on the cloth and with a name of their own', () => {
    for (const kind of startingForms) {
      const box = shapeBox(newShape(kind, 'a', 'y1', grid, cloth, []), cloth)!;
      expect(box.left).toBeCloseTo(-box.right);
      expect(box.bottom).toBeGreaterThanOrEqual(cloth.bottom);
      expect(box.top).toBeLessThanOrEqual(cloth.top);
    }
    expect(freeName('Arch', ['Arch', 'Arch 2'])).toBe('Arch 3');
  });
});

describe('mirroring', () => {
  it('turns a shape over in any line', () => {
    const angles = fc.oneof(fc.constantFrom(0, Math.PI / 2, -Math.PI / 2), number(-3, 3));
    fc.assert(
      fc.property(
        anyShape,
        angles,
        number(-40, 40),
        number(50, 150),
        number(-80, 80),
        number(0, 200),
        (shape, angle, lx, ly, x, y) => {
          const upright = Math.abs(Math.abs(angle) - Math.PI / 2) < 1e-12;
          // A band is endless sideways, but its picture ends past the cloth; slanted copies are compared on polygons.
          fc.pre(shape.form.kind !== 'band' || upright || angle === 0);
          fc.pre(clearOf(shape, x, y));
          const cosine = Math.cos(2 * angle);
          const sine = Math.sin(2 * angle);
          const mx = lx + (x - lx) * cosine + (y - ly) * sine;
          const my = ly + (x - lx) * sine - (y - ly) * cosine;
          fc.pre(shape.form.kind !== 'band' || Math.abs(mx) < 100);
          expect(inShape(mirrorImage(shape, { x: lx, y: ly, angle }, cloth), mx, my)).toBe(inShape(shape, x, y));
        },
      ),
      { numRuns: 500 },
    );
  });

  it('separates living copies without changing the cloth', () => {
    fc.assert(
      fc.property(anyShape, number(-80, 80), number(0, 200), (shape, x, y) => {
        fc.pre(shape.form.kind !== 'band');
        const living = setRepeat(setMirror(shape, 12), 2, 30, -7);
        fc.pre(clearOf(living, x, y));
        const apart = separateCopies(living, ['b', 'c', 'd', 'e', 'f'], cloth);
        expect(apart).toHaveLength(6);
        expect(apart.some((one) => inShape(one, x, y))).toBe(inShape(living, x, y));
      }),
      { numRuns: 300 },
    );
  });
});

describe('points of a shape', () => {
  it('works a turn in without changing the cloth', () => {
    fc.assert(
      fc.property(anyShape, number(-80, 80), number(0, 200), (shape, x, y) => {
        fc.pre(clearOf(shape, x, y));
        const worked = withTurnWorkedIn(shape, cloth);
        expect(worked.rotation).toBe(0);
        expect(inShape(worked, x, y)).toBe(inShape(shape, x, y));
      }),
      { numRuns: 300 },
    );
  });

  it('puts in a point without changing the outline, and takes it out again', () => {
    fc.assert(
      fc.property(anyShape, fc.nat(20), number(0.1, 0.9), (shape, pick, t) => {
        const worked = withTurnWorkedIn(shape, cloth);
        const vertices = verticesOf(worked);
        const index = vertices[pick % vertices.length]!.index;
        const more = insertVertex(worked, index, t);
        expect(Math.abs(shapeArea(more, cloth) - shapeArea(worked, cloth))).toBeLessThan(
          0.02 + 0.001 * shapeArea(worked, cloth),
        );
        const isMove = worked.form.kind === 'path' && worked.form.commands[index]?.to === 'move';
        expect(verticesOf(more).length).toBe(vertices.length + (isMove ? 0 : 1));
      }),
      { numRuns: 200 },
    );
    const square = shapeOf({ kind: 'polygon', points: [point(0, 0), point(10, 0), point(10, 10), point(0, 10)] });
    expect(deleteVertex(insertVertex(square, 0, 0.5), 4)).toEqual(square);
  });

  it('keeps at least three corners', () => {
    const triangle = shapeOf({ kind: 'polygon', points: [point(0, 0), point(10, 0), point(5, 8)] });
    expect(deleteVertex(triangle, 1)).toBe(triangle);
    const path = withTurnWorkedIn(
      shapeOf({ kind: 'ellipse', centre: point(0, 0), radiusX: mm(9), radiusY: mm(5) }),
      cloth,
    );
    let fewer = path;
    for (let step = 0; step < 20; step++) fewer = deleteVertex(fewer, 0);
    expect(verticesOf(fewer).length).toBe(3);
    expect(shapeArea(fewer, cloth)).toBeGreaterThan(0);
  });

  it('moves one corner', () => {
    const square = shapeOf({ kind: 'polygon', points: [point(0, 0), point(10, 0), point(10, 10), point(0, 10)] });
    expect(shapeArea(moveVertex(square, 2, 20, 20), cloth)).toBeCloseTo(200);
  });
});

describe('area', () => {
  it('is exact for polygons', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 40 }), number(1, 90), number(1, 90), (corners, rx, ry) => {
        // Points round an ellipse in order: a polygon that never crosses itself.
        const points = Array.from({ length: corners }, (_, at) => {
          const angle = (2 * Math.PI * at) / corners + 0.1;
          return point(rx * Math.cos(angle), ry * Math.sin(angle));
        });
        const exact = (rx * ry * corners * Math.sin((2 * Math.PI) / corners)) / 2;
        const shape = shapeOf({ kind: 'polygon', points });
        expect(shapeArea(shape, cloth)).toBeCloseTo(exact, 6);
        expect(signedRingArea(outlinesOf(shape, cloth)[0]!.rings[0]!)).toBeCloseTo(exact, 6);
      }),
    );
  });

  it('counts a crossing polygon by what it fills', () => {
    // A bow tie: two triangles of 50 mm², whose signed areas cancel.
    const bow = shapeOf({ kind: 'polygon', points: [point(0, 0), point(20, 20), point(20, 0), point(0, 20)] });
    const area = outlineArea(outlinesOf(bow, cloth)[0]!);
    expect(area).toBeGreaterThan(199);
    expect(area).toBeLessThan(201);
  });
});

describe('the pile', () => {
  const shapes = ['a', 'b', 'c', 'd'].map((id) => shapeOf({ kind: 'band', from: clothMm(0), to: clothMm(9) }, { id }));
  const order = (list: readonly Shape[]) => list.map((shape) => shape.id).join('');
  it('moves one shape and keeps the rest', () => {
    expect(order(restack(shapes, 'c', 'up'))).toBe('acbd');
    expect(order(restack(shapes, 'c', 'down'))).toBe('abdc');
    expect(order(restack(shapes, 'c', 'top'))).toBe('cabd');
    expect(order(restack(shapes, 'a', 'bottom'))).toBe('bcda');
    expect(restack(shapes, 'a', 'up')).toBe(shapes);
    expect(restack(shapes, 'x', 'up')).toBe(shapes);
  });
  it('finds the topmost shown shape, else one within reach', () => {
    const big = shapeOf({ kind: 'ellipse', centre: point(0, 50), radiusX: mm(40), radiusY: mm(40) }, { id: 'big' });
    const small = shapeOf({ kind: 'ellipse', centre: point(0, 50), radiusX: mm(5), radiusY: mm(5) }, { id: 'small' });
    expect(shapeAt([small, big], 0, 50, cloth, 2)?.id).toBe('small');
    expect(shapeAt([{ ...small, hidden: true }, big], 0, 50, cloth, 2)?.id).toBe('big');
    expect(shapeAt([small, big], 41, 50, cloth, 2)?.id).toBe('big');
    expect(shapeAt([small, big], 60, 50, cloth, 2)).toBeNull();
  });
});

describe('freehand', () => {
  it('turns a shaky circle into a smooth path of about its area', () => {
    const stroke = Array.from({ length: 400 }, (_, at) => {
      const angle = (2 * Math.PI * at) / 400;
      const r = 40 + 0.4 * Math.sin(97 * angle) + 0.3 * Math.cos(61 * angle);
      return { x: r * Math.cos(angle), y: 100 + r * Math.sin(angle) };
    });
    const drawn = freehandForm(stroke, 0.8);
    expect(drawn.ok).toBe(true);
    if (!drawn.ok || drawn.value.kind !== 'path') return;
    expect(drawn.value.commands.length).toBeLessThan(60);
    const area = shapeArea(shapeOf(drawn.value), cloth);
    expect(area / (Math.PI * 1600)).toBeGreaterThan(0.98);
    expect(area / (Math.PI * 1600)).toBeLessThan(1.02);
  });
  it('says when a stroke encloses nothing', () => {
    for (const stroke of [[], [point(0, 0)], [point(0, 0), point(30, 0), point(60, 0)], [{ x: Number.NaN, y: 0 }]]) {
      const drawn = freehandForm(stroke, 0.5);
      expect(drawn.ok ? '' : drawn.problem.tag).toBe('stroke-too-short');
    }
  });
});
