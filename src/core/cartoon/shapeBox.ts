import { type Box, boxMiddle, boxOfRings, unionOfBoxes } from '../geometry/box.ts';
import type { Shape } from '../model/piece.ts';
import { formRings } from './formRings.ts';
import { outlinesOf } from './outline.ts';

/** The box of the drawn form before it is turned, repeated or mirrored; null for a form that encloses nothing. */
export const formBox = (shape: Pick<Shape, 'form'>, cloth: Box): Box | null => boxOfRings(formRings(shape.form, cloth));

/** The middle of that box: what the shape turns about. */
export const turningPoint = (shape: Pick<Shape, 'form'>, cloth: Box): { readonly x: number; readonly y: number } =>
  boxMiddle(formBox(shape, cloth) ?? cloth);

/** The upright box of one copy of the shape as it lies on the cloth. */
export const shapeBox = (shape: Shape, cloth: Box): Box | null =>
  outlinesOf({ ...shape, mirrorAbout: null, repeat: null }, cloth)[0]?.box ?? null;

/** The upright box of the shape with all its copies. */
export const wholeShapeBox = (shape: Shape, cloth: Box): Box | null =>
  unionOfBoxes(outlinesOf(shape, cloth).map((outline) => outline.box));
