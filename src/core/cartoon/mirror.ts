import { type Affine, applyX, applyY, mirrorInLine, mirrorUpright } from '../geometry/affine.ts';
import type { Box } from '../geometry/box.ts';
import { mapCommands } from '../geometry/mapCommands.ts';
import type { Shape, ShapeForm } from '../model/piece.ts';
import { clothMm, mm, radians } from '../model/units.ts';
import { withTurnWorkedIn } from './formCommands.ts';
import { moveShape } from './place.ts';

/** The shape with a living mirror image about the upright line at `x` mm (0 is the middle of the cloth), or with none. */
export const setMirror = (shape: Shape, x: number | null): Shape => ({
  ...shape,
  mirrorAbout: x === null ? null : clothMm(x),
});

/** The shape with living copies, each moved by (dx, dy) mm from the last; no copies takes the repeat away. */
export const setRepeat = (shape: Shape, copies: number, dx: number, dy: number): Shape => ({
  ...shape,
  repeat: copies < 1 ? null : { copies: Math.min(500, Math.floor(copies)), dx: mm(dx), dy: mm(dy) },
});

/** A straight line to mirror in: through (x, y), at `angle` radians from level, anticlockwise. */
export interface MirrorLine {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
}

function mirrorForm(form: ShapeForm, map: Affine): ShapeForm {
  const place = (point: { readonly x: number; readonly y: number }) => ({
    x: clothMm(applyX(map, point.x, point.y)),
    y: clothMm(applyY(map, point.x, point.y)),
  });
  switch (form.kind) {
    case 'polygon':
      return { ...form, points: form.points.map(place) };
    case 'path':
      return { ...form, commands: mapCommands(map, form.commands) };
    case 'ellipse':
      return { ...form, centre: place(form.centre) };
    case 'arch':
      return { ...form, base: place(form.base) };
    case 'band':
      return form;
  }
}

/**
 * The shape turned over in a line, in place: a mirror image of its own, to move on by itself. Its living mirror and
 * repeat are left out, since they belong to the one it was taken from. In an upright line ellipses, arches and bands
 * keep their kind; in a slanting line arches and bands become paths.
 */
export function mirrorImage(shape: Shape, line: MirrorLine, cloth: Box): Shape {
  const plain: Shape = { ...shape, mirrorAbout: null, repeat: null };
  const halfTurns = line.angle / (Math.PI / 2);
  const upright = Math.abs(halfTurns % 2) === 1;
  const map = upright ? mirrorUpright(line.x) : mirrorInLine(line.angle, line.x, line.y);
  const { form } = plain;
  if (upright && form.kind === 'band' && plain.rotation === 0) return plain;
  if (upright && form.kind === 'arch') {
    // The middle of its box is on its own axis, so turning the other way is the whole mirror image.
    return { ...plain, form: mirrorForm(form, map), rotation: radians(0 - plain.rotation) };
  }
  if (form.kind === 'ellipse') {
    // A mirror in a line at angle φ sends a turn θ to 2φ − θ; an ellipse looks the same after half a turn.
    const turn = (upright ? 0 : 2 * line.angle) - plain.rotation;
    const within = ((turn % Math.PI) + Math.PI) % Math.PI;
    return {
      ...plain,
      form: mirrorForm(form, map),
      rotation: radians(within > Math.PI / 2 ? within - Math.PI : within),
    };
  }
  const level = !upright && halfTurns % 2 === 0;
  if (level && form.kind === 'band' && plain.rotation === 0) {
    return {
      ...plain,
      form: { ...form, from: clothMm(2 * line.y - form.to), to: clothMm(2 * line.y - form.from) },
    };
  }
  const worked = withTurnWorkedIn(plain, cloth);
  return { ...worked, form: mirrorForm(worked.form, map) };
}

/** Living copies made into shapes of their own. @param ids one name for each copy beyond the first. */
export function separateCopies(shape: Shape, ids: readonly string[], cloth: Box): Shape[] {
  const plain: Shape = { ...shape, mirrorAbout: null, repeat: null };
  const repeat = shape.repeat;
  const places: Shape[] = [plain];
  for (let copy = 1; copy <= (repeat?.copies ?? 0); copy++) {
    places.push(moveShape(plain, copy * (repeat?.dx ?? 0), copy * (repeat?.dy ?? 0)));
  }
  const about = shape.mirrorAbout;
  const images =
    about === null ? [] : places.map((place) => mirrorImage(place, { x: about, y: 0, angle: Math.PI / 2 }, cloth));
  return [...places, ...images]
    .slice(0, ids.length + 1)
    .map((copy, at) => (at === 0 ? copy : { ...copy, id: ids[at - 1]! }));
}
