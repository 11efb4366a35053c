import { moveVertex, verticesOf } from '../../../core/cartoon/vertices.ts';
import type { Shape, ShapeForm } from '../../../core/model/piece.ts';
import { clothMm, mm } from '../../../core/model/units.ts';

/** A place of a shape that can be taken hold of, cloth mm. */
export interface Handle {
  readonly index: number;
  readonly x: number;
  readonly y: number;
  /** A corner of its own, which can be taken out and set beside; others belong to the form. */
  readonly corner: boolean;
}

const held = (places: readonly (readonly [number, number])[]): Handle[] =>
  places.map(([x, y], index) => ({ index, x, y, corner: false }));

/**
 * What can be taken hold of on a shape. A turned shape has none until the turn is worked into its corners.
 * An ellipse: right, top, left, foot. An arch: left foot, right foot, springing at the right, crown. A band: foot, head.
 * @param middle where a band's handles stand.
 */
export function handlesOf(shape: Shape, middle: number): readonly Handle[] {
  if (shape.rotation !== 0) return [];
  const { form } = shape;
  switch (form.kind) {
    case 'ellipse': {
      const { x, y } = form.centre;
      return held([
        [x + form.radiusX, y],
        [x, y + form.radiusY],
        [x - form.radiusX, y],
        [x, y - form.radiusY],
      ]);
    }
    case 'arch': {
      const { x, y } = form.base;
      const half = form.width / 2;
      return held([
        [x - half, y],
        [x + half, y],
        [x + half, y + form.springing],
        [x, y + form.springing + form.rise],
      ]);
    }
    case 'band':
      return held([
        [middle, form.from],
        [middle, form.to],
      ]);
    default:
      return verticesOf(shape).map((vertex) => ({ ...vertex, corner: true }));
  }
}

const LEAST = 1;

/** One handle moved to (x, y); what lies opposite stays. */
export function moveHandle(shape: Shape, index: number, x: number, y: number): Shape {
  const form = movedForm(shape.form, index, x, y);
  return form === null ? moveVertex(shape, index, x, y) : { ...shape, form };
}

function movedForm(form: ShapeForm, index: number, x: number, y: number): ShapeForm | null {
  switch (form.kind) {
    case 'ellipse': {
      const { centre } = form;
      if (index % 2 === 0) {
        const fixed = centre.x + (index === 0 ? -form.radiusX : form.radiusX);
        const radius = Math.max(LEAST, Math.abs(x - fixed) / 2);
        return {
          ...form,
          radiusX: mm(radius),
          centre: { ...centre, x: clothMm(fixed + (index === 0 ? radius : -radius)) },
        };
      }
      const fixed = centre.y + (index === 1 ? -form.radiusY : form.radiusY);
      const radius = Math.max(LEAST, Math.abs(y - fixed) / 2);
      return {
        ...form,
        radiusY: mm(radius),
        centre: { ...centre, y: clothMm(fixed + (index === 1 ? radius : -radius)) },
      };
    }
    case 'arch': {
      const { base, width, springing, rise } = form;
      if (index <= 1) {
        const fixed = base.x + (index === 0 ? width / 2 : -width / 2);
        const wide = Math.max(LEAST, index === 0 ? fixed - x : x - fixed);
        const foot = Math.min(y, base.y + springing);
        return {
          ...form,
          width: mm(wide),
          springing: mm(base.y + springing - foot),
          base: { x: clothMm(fixed + (index === 0 ? -wide / 2 : wide / 2)), y: clothMm(foot) },
        };
      }
      const crown = base.y + springing + rise;
      if (index === 2) {
        const line = Math.min(crown - LEAST, Math.max(base.y, y));
        return { ...form, springing: mm(line - base.y), rise: mm(crown - line) };
      }
      return { ...form, rise: mm(Math.max(LEAST, y - base.y - springing)) };
    }
    case 'band':
      return index === 0
        ? { ...form, from: clothMm(Math.min(y, form.to - LEAST)) }
        : { ...form, to: clothMm(Math.max(y, form.from + LEAST)) };
    default:
      return null;
  }
}
