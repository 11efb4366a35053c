import { identity, rotationAbout } from '../geometry/affine.ts';
import { arcCubics } from '../geometry/arcCubics.ts';
import type { Box } from '../geometry/box.ts';
import { mapCommands } from '../geometry/mapCommands.ts';
import type { PathCommand, Shape, ShapeForm } from '../model/piece.ts';
import { clothMm, radians } from '../model/units.ts';
import { turningPoint } from './shapeBox.ts';

const through = (points: readonly { readonly x: number; readonly y: number }[]): PathCommand[] => [
  ...points.map(({ x, y }, at): PathCommand => ({ to: at === 0 ? 'move' : 'line', x, y })),
  { to: 'close' },
];

/** Any form as path commands in cloth mm; ellipses and arches become cubic curves within 0.001 mm. */
export function formCommands(form: ShapeForm, cloth: Box): readonly PathCommand[] {
  switch (form.kind) {
    case 'polygon':
      return through(form.points);
    case 'ellipse': {
      const { centre, radiusX, radiusY } = form;
      return [
        { to: 'move', x: centre.x + radiusX, y: centre.y },
        ...arcCubics(centre.x, centre.y, radiusX, radiusY, 0, 0, 2 * Math.PI),
        { to: 'close' },
      ];
    }
    case 'arch': {
      const half = form.width / 2;
      const { x, y } = form.base;
      const springLine = y + form.springing;
      const head: PathCommand[] = [
        { to: 'line', x: x + half, y: springLine },
        ...arcCubics(x, springLine, half, form.rise, 0, 0, Math.PI),
        { to: 'close' },
      ];
      return [{ to: 'move', x: x - half, y }, { to: 'line', x: x + half, y }, ...head];
    }
    case 'band':
      return through([
        { x: cloth.left, y: form.from },
        { x: cloth.right, y: form.from },
        { x: cloth.right, y: form.to },
        { x: cloth.left, y: form.to },
      ]);
    case 'path':
      return form.commands;
  }
}

/**
 * The same shape with its turn worked into its points, so single points can be moved without the rest shifting (a
 * turned shape turns about the middle of its box, and moving a point moves that middle). A polygon stays a polygon;
 * everything else becomes a path. Mirror and repeat stay as they are.
 */
export function withTurnWorkedIn(shape: Shape, cloth: Box): Shape {
  const middle = turningPoint(shape, cloth);
  const map = shape.rotation === 0 ? identity : rotationAbout(shape.rotation, middle.x, middle.y);
  const { form } = shape;
  const commands = mapCommands(map, formCommands(form, cloth));
  if (form.kind === 'polygon') {
    const points = commands.flatMap((command) =>
      command.to === 'close' ? [] : [{ x: clothMm(command.x), y: clothMm(command.y) }],
    );
    return { ...shape, rotation: radians(0), form: { kind: 'polygon', points } };
  }
  const fillRule = form.kind === 'path' ? form.fillRule : 'nonzero';
  const origin = form.kind === 'path' ? form.origin : 'freehand';
  return { ...shape, rotation: radians(0), form: { kind: 'path', commands, fillRule, origin } };
}
