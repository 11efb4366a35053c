import { describe, expect, it } from 'vitest';
import type { PathCommand, Piece, Shape, ShapeForm } from '../../src/core/model/piece.ts';
import { type ClothPoint, clothMm, metres, mm } from '../../src/core/model/units.ts';
import { planPiece } from '../../src/core/plan/planPiece.ts';
import { generatedPiece } from '../virtual-weaver/generatedPiece.ts';

type Move = (point: { x: number; y: number }) => { x: number; y: number };

/** Every point of a form moved; `size` is how much larger lengths become. */
function movedForm(form: ShapeForm, move: Move, size: number): ShapeForm | null {
  const at = (point: { x: number; y: number }): ClothPoint => {
    const { x, y } = move(point);
    return { x: clothMm(x), y: clothMm(y) };
  };
  switch (form.kind) {
    case 'polygon':
      return { ...form, points: form.points.map(at) };
    case 'ellipse':
      return { ...form, centre: at(form.centre), radiusX: mm(form.radiusX * size), radiusY: mm(form.radiusY * size) };
    case 'band': {
      const edges = [at({ x: 0, y: form.from }).y, at({ x: 0, y: form.to }).y];
      return { ...form, from: clothMm(Math.min(...edges)), to: clothMm(Math.max(...edges)) };
    }
    case 'path':
      return { ...form, commands: form.commands.map((command) => movedCommand(command, at)) };
    case 'arch':
      return null;
  }
}

function movedCommand(command: PathCommand, at: Move): PathCommand {
  if (command.to === 'close') return command;
  const end = at(command);
  if (command.to !== 'cubic') return { ...command, ...end };
  const [one, two] = [at({ x: command.x1, y: command.y1 }), at({ x: command.x2, y: command.y2 })];
  return { to: 'cubic', x1: one.x, y1: one.y, x2: two.x, y2: two.y, ...end };
}

/** Null when a shape can't be turned this way: an arch only stands upright. */
function movedShapes(piece: Piece, move: Move, along: number): readonly Shape[] | null {
  const shapes = piece.shapes.map((shape): Shape | null => {
    const form = movedForm(shape.form, move, Math.abs(along));
    if (form === null) return null;
    return {
      ...shape,
      form,
      mirrorAbout: shape.mirrorAbout === null ? null : clothMm(shape.mirrorAbout * along),
      repeat:
        shape.repeat === null
          ? null
          : { ...shape.repeat, dx: mm(shape.repeat.dx * along), dy: mm(shape.repeat.dy * along) },
    };
  });
  return shapes.every((shape) => shape !== null) ? shapes : null;
}

/** Whole passes and no header, so that a turned piece has the same grid. */
function plain(seed: number): Piece {
  const piece = generatedPiece(seed);
  const { passHeight } = piece.cloth;
  const height = mm(Math.round(piece.cloth.height / passHeight) * passHeight);
  return { ...piece, cloth: { ...piece.cloth, height, headerPasses: 0, footerPasses: 0 } };
}

describe('materials of a changed piece', () => {
  it('turned upside down, a piece without a header takes the same yarn to 0.1 %', () => {
    let turnedPieces = 0;
    const apart: string[] = [];
    for (let seed = 0; seed < 80; seed += 1) {
      const piece = plain(seed);
      const shapes = movedShapes(piece, ({ x, y }) => ({ x: -x, y: piece.cloth.height - y }), -1);
      if (shapes === null) continue;
      turnedPieces += 1;
      const upright = planPiece(piece).materials;
      const turned = planPiece({ ...piece, shapes }).materials;
      upright.yarns.forEach((need, index) => {
        const other = turned.yarns[index]?.metres ?? 0;
        if (Math.abs(other - need.metres) > 0.001 * need.metres) {
          apart.push(`seed ${seed}, ${need.name}: ${need.metres} and ${other} m`);
        }
      });
    }
    expect(turnedPieces).toBeGreaterThan(50);
    expect(apart).toEqual([]);
  });

  it('drawn twice as large on twice the pitch with twice the yarn, it has the same chart and twice the metres', () => {
    for (let seed = 0; seed < 30; seed += 1) {
      const piece = plain(seed);
      const shapes = movedShapes(piece, ({ x, y }) => ({ x: 2 * x, y: 2 * y }), 2);
      if (shapes === null) continue;
      const { loom, warp, cloth, making } = piece;
      const large: Piece = {
        ...piece,
        shapes,
        loom: { ...loom, notchPitch: mm(2 * loom.notchPitch), openingHeight: mm(2 * loom.openingHeight) },
        warp: { ...warp, stringDiameter: mm(2 * warp.stringDiameter) },
        cloth: { ...cloth, height: mm(2 * cloth.height), passHeight: mm(2 * cloth.passHeight) },
        making: {
          ...making,
          tail: mm(2 * making.tail),
          workingLength: metres(2 * making.workingLength),
          hillLimit: mm(2 * making.hillLimit),
          slitLimit: mm(2 * making.slitLimit),
        },
      };
      const [small, double] = [planPiece(piece), planPiece(large)];
      expect(double.chart.cells, `seed ${seed}`).toEqual(small.chart.cells);
      small.materials.yarns.forEach((need, index) => {
        expect(double.materials.yarns[index]?.metres).toBeCloseTo(2 * need.metres, 6);
      });
    }
  });
});
