import type { Box } from '../geometry/box.ts';
import type { Shape, ShapeForm } from '../model/piece.ts';
import { type ClothPoint, clothMm, mm, radians } from '../model/units.ts';
import { snapToEndEdge, snapToTurn, type WeavingGrid } from './snap.ts';

/** Forms a weaver can start from; each is put on the middle of the cloth, sized to it, on whole ends and turns. */
export const startingForms = ['rectangle', 'diamond', 'hexagon', 'hill', 'ellipse', 'arch', 'band'] as const;
export type StartingForm = (typeof startingForms)[number];

const names: Record<StartingForm, string> = {
  rectangle: 'Rectangle',
  diamond: 'Diamond',
  hexagon: 'Hexagon',
  hill: 'Hill',
  ellipse: 'Ellipse',
  arch: 'Arch',
  band: 'Band',
};

const point = (x: number, y: number): ClothPoint => ({ x: clothMm(x), y: clothMm(y) });

/** A starting form filling a box, mm. */
export function formInBox(kind: StartingForm, box: Box): ShapeForm {
  const { left, right, bottom, top } = box;
  const x = (left + right) / 2;
  const y = (bottom + top) / 2;
  const polygon = (...points: ClothPoint[]): ShapeForm => ({ kind: 'polygon', points });
  switch (kind) {
    case 'rectangle':
      return polygon(point(left, bottom), point(right, bottom), point(right, top), point(left, top));
    case 'diamond':
      return polygon(point(x, bottom), point(right, y), point(x, top), point(left, y));
    case 'hexagon': {
      const quarter = (top - bottom) / 4;
      return polygon(
        point(x, bottom),
        point(right, bottom + quarter),
        point(right, top - quarter),
        point(x, top),
        point(left, top - quarter),
        point(left, bottom + quarter),
      );
    }
    case 'hill':
      return polygon(point(left, bottom), point(right, bottom), point(x, top));
    case 'ellipse':
      return { kind: 'ellipse', centre: point(x, y), radiusX: mm((right - left) / 2), radiusY: mm((top - bottom) / 2) };
    case 'arch': {
      const rise = Math.min((right - left) / 2, top - bottom);
      return {
        kind: 'arch',
        base: point(x, bottom),
        width: mm(right - left),
        springing: mm(top - bottom - rise),
        rise: mm(rise),
      };
    }
    case 'band':
      return { kind: 'band', from: clothMm(bottom), to: clothMm(top) };
  }
}

/** A name not yet taken: Arch, Arch 2, Arch 3 … */
export function freeName(wanted: string, taken: readonly string[]): string {
  if (!taken.includes(wanted)) return wanted;
  let count = 2;
  while (taken.includes(`${wanted} ${count}`)) count++;
  return `${wanted} ${count}`;
}

/** A shape that starts plain: nothing turned, mirrored, repeated, hidden or locked; neighbours meet in slits. */
export const plainShape = (id: string, name: string, yarn: string, form: ShapeForm): Shape => ({
  id,
  name,
  yarn,
  form,
  rotation: radians(0),
  mirrorAbout: null,
  repeat: null,
  boundary: 'slit',
  singlePass: false,
  hidden: false,
  locked: false,
});

/**
 * A new shape on the middle of the cloth, about a third of its width and height, standing on whole ends and turns.
 * @param taken names already used.
 */
export function newShape(
  kind: StartingForm,
  id: string,
  yarn: string,
  grid: WeavingGrid,
  cloth: Box,
  taken: readonly string[],
): Shape {
  const third = (cloth.right - cloth.left) / 6;
  const right = Math.max(grid.pitch, Math.abs(snapToEndEdge(third, grid)));
  // The nearest line may differ by an end left and right of the middle: the left is the right's mirror image.
  const box = {
    left: -right,
    right,
    bottom: snapToTurn(cloth.bottom + (cloth.top - cloth.bottom) / 3, grid),
    top: snapToTurn(cloth.bottom + ((cloth.top - cloth.bottom) * 2) / 3, grid),
  };
  const tall = Math.max(box.top, box.bottom + 2 * grid.passHeight);
  return plainShape(id, freeName(names[kind], taken), yarn, formInBox(kind, { ...box, top: tall }));
}
