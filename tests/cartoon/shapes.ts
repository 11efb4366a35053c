import type { Shape, ShapeForm } from '../../src/core/model/piece.ts';
import { type ClothPoint, clothMm, radians } from '../../src/core/model/units.ts';

export const point = (x: number, y: number): ClothPoint => ({ x: clothMm(x), y: clothMm(y) });

/** A shape with nothing turned, mirrored or repeated unless said. */
export const shapeOf = (form: ShapeForm, changes: Partial<Shape> = {}): Shape => ({
  id: 's1',
  name: 'Shape',
  yarn: 'y1',
  form,
  rotation: radians(0),
  mirrorAbout: null,
  repeat: null,
  boundary: 'slit',
  singlePass: false,
  hidden: false,
  locked: false,
  ...changes,
});
