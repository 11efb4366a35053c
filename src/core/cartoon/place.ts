import { translation } from '../geometry/affine.ts';
import type { Box } from '../geometry/box.ts';
import { mapCommands } from '../geometry/mapCommands.ts';
import type { Shape, ShapeForm } from '../model/piece.ts';
import { type ClothPoint, clothMm, mm, radians } from '../model/units.ts';
import { formBox, turningPoint } from './shapeBox.ts';

/** No shape is made smaller than this across, mm: smaller, it could no longer be taken hold of. */
export const SMALLEST_MM = 1;

const shifted = (point: ClothPoint, dx: number, dy: number): ClothPoint => ({
  x: clothMm(point.x + dx),
  y: clothMm(point.y + dy),
});

function moveForm(form: ShapeForm, dx: number, dy: number): ShapeForm {
  switch (form.kind) {
    case 'polygon':
      return { ...form, points: form.points.map((point) => shifted(point, dx, dy)) };
    case 'ellipse':
      return { ...form, centre: shifted(form.centre, dx, dy) };
    case 'band':
      return { ...form, from: clothMm(form.from + dy), to: clothMm(form.to + dy) };
    case 'arch':
      return { ...form, base: shifted(form.base, dx, dy) };
    case 'path':
      return { ...form, commands: mapCommands(translation(dx, dy), form.commands) };
  }
}

/** The shape moved by (dx, dy) mm, right and up. Its mirror line stays; a band moves only up or down. */
export const moveShape = (shape: Shape, dx: number, dy: number): Shape => ({
  ...shape,
  form: moveForm(shape.form, dx, dy),
});

function scaleForm(form: ShapeForm, sx: number, sy: number, x: number, y: number): ShapeForm {
  const place = (point: ClothPoint): ClothPoint => ({
    x: clothMm(x + (point.x - x) * sx),
    y: clothMm(y + (point.y - y) * sy),
  });
  switch (form.kind) {
    case 'polygon':
      return { ...form, points: form.points.map(place) };
    case 'ellipse':
      return {
        ...form,
        centre: place(form.centre),
        radiusX: mm(form.radiusX * sx),
        radiusY: mm(form.radiusY * sy),
      };
    case 'band':
      return { ...form, from: clothMm(y + (form.from - y) * sy), to: clothMm(y + (form.to - y) * sy) };
    case 'arch':
      return {
        ...form,
        base: place(form.base),
        width: mm(form.width * sx),
        springing: mm(form.springing * sy),
        rise: mm(form.rise * sy),
      };
    case 'path':
      return { ...form, commands: mapCommands([sx, 0, 0, sy, x - sx * x, y - sy * y], form.commands) };
  }
}

/**
 * The shape grown along its own axes, with one point of the cloth held still (a corner, when the opposite handle is
 * dragged).
 * @param sx share of the width, > 0; held where the shape would be narrower than 1 mm.
 * @param sy share of the height, likewise.
 */
export function scaleShape(
  shape: Shape,
  sx: number,
  sy: number,
  anchor: { readonly x: number; readonly y: number },
  cloth: Box,
): Shape {
  const box = formBox(shape, cloth);
  if (box === null) return shape;
  const held = (share: number, size: number) =>
    Number.isFinite(share) ? Math.max(share, size > 0 ? Math.min(1, SMALLEST_MM / size) : 1) : 1;
  const width = held(sx, box.right - box.left);
  const height = held(sy, box.top - box.bottom);
  const middle = turningPoint(shape, cloth);
  const scaled = { ...shape, form: scaleForm(shape.form, width, height, middle.x, middle.y) };
  // In the shape's own axes the anchor goes out from the middle by its shares; move the shape back by what it went.
  const cosine = Math.cos(shape.rotation);
  const sine = Math.sin(shape.rotation);
  const ax = anchor.x - middle.x;
  const ay = anchor.y - middle.y;
  const u = (cosine * ax + sine * ay) * (width - 1);
  const v = (-sine * ax + cosine * ay) * (height - 1);
  return moveShape(scaled, -(cosine * u - sine * v), -(sine * u + cosine * v));
}

/** The shape turned further about the middle of its own box; the stored turn stays within half a turn either way. */
export function rotateShape(shape: Shape, by: number): Shape {
  const whole = 2 * Math.PI;
  let turn = (shape.rotation + by) % whole;
  if (turn > Math.PI) turn -= whole;
  else if (turn <= -Math.PI) turn += whole;
  return { ...shape, rotation: radians(turn) };
}

/** Sizes typed by the weaver, mm; what is left out stays. `left` and `bottom` place the box of the form as drawn. */
export interface WantedSize {
  readonly width?: number;
  readonly height?: number;
  readonly left?: number;
  readonly bottom?: number;
}

/**
 * The shape at a given size and place, measured on its box before turning. Widening keeps the middle; growing taller
 * keeps the foot, as work grows upward.
 */
export function resizeShape(shape: Shape, wanted: WantedSize, cloth: Box): Shape {
  const box = formBox(shape, cloth);
  if (box === null) return shape;
  const upright = { ...shape, rotation: radians(0) };
  const share = (size: number | undefined, now: number) => (size === undefined || now <= 0 ? 1 : size / now);
  const anchor = { x: (box.left + box.right) / 2, y: box.bottom };
  const sized = scaleShape(
    upright,
    share(wanted.width, box.right - box.left),
    share(wanted.height, box.top - box.bottom),
    anchor,
    cloth,
  );
  const now = formBox(sized, cloth) ?? box;
  const moved = moveShape(
    sized,
    wanted.left === undefined ? 0 : wanted.left - now.left,
    wanted.bottom === undefined ? 0 : wanted.bottom - now.bottom,
  );
  return { ...moved, rotation: shape.rotation };
}
