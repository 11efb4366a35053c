import type { Box } from '../geometry/box.ts';
import { flattenCommands } from '../geometry/flattenCommands.ts';
import type { PathCommand, ShapeForm } from '../model/piece.ts';

/** Strokes are followed to within a few of this, mm. */
export const FLATNESS_MM = 0.02;

/**
 * Equal steps of angle for a quarter ellipse: chords stray by 2e-5 of the larger radius, 0.02 mm on a circle of a metre.
 * The same number whatever the size, so that a piece made larger in all its parts keeps its chart to the cell.
 */
const QUARTER_STEPS = 128;

/** Curves of a path are followed to within this share of its own size, for the same reason: 0.02 mm on 400 mm. */
const PATH_FLATNESS = 5e-5;

/** Points of a quarter ellipse from (radiusX, 0) to (0, radiusY), both included. */
function quarterEllipse(radiusX: number, radiusY: number): [number, number][] {
  const points: [number, number][] = [[radiusX, 0]];
  for (let step = 1; step < QUARTER_STEPS; step++) {
    const angle = (step / QUARTER_STEPS) * (Math.PI / 2);
    points.push([radiusX * Math.cos(angle), radiusY * Math.sin(angle)]);
  }
  points.push([0, radiusY]);
  return points;
}

/** One quarter, reflected: so the two halves are mirror images to the last bit. */
function ellipseRing(centreX: number, centreY: number, radiusX: number, radiusY: number): Float64Array {
  const quarter = quarterEllipse(radiusX, radiusY);
  const last = quarter.length - 1;
  const ring: number[] = [];
  for (let at = 0; at < last; at++) ring.push(centreX + quarter[at]![0], centreY + quarter[at]![1]);
  for (let at = last; at > 0; at--) ring.push(centreX - quarter[at]![0], centreY + quarter[at]![1]);
  for (let at = 0; at < last; at++) ring.push(centreX - quarter[at]![0], centreY - quarter[at]![1]);
  for (let at = last; at > 0; at--) ring.push(centreX + quarter[at]![0], centreY - quarter[at]![1]);
  return Float64Array.from(ring);
}

function archRing(form: Extract<ShapeForm, { kind: 'arch' }>): Float64Array {
  const half = form.width / 2;
  const { x, y } = form.base;
  const springLine = y + form.springing;
  const quarter = quarterEllipse(half, form.rise);
  const ring: number[] = [];
  if (form.springing > 0) ring.push(x - half, y, x + half, y);
  for (const [dx, dy] of quarter) ring.push(x + dx, springLine + dy);
  for (let at = quarter.length - 2; at >= 0; at--) ring.push(x - quarter[at]![0], springLine + quarter[at]![1]);
  return Float64Array.from(ring);
}

function pathFlatness(commands: readonly PathCommand[]): number {
  let left = Number.POSITIVE_INFINITY;
  let right = Number.NEGATIVE_INFINITY;
  let bottom = Number.POSITIVE_INFINITY;
  let top = Number.NEGATIVE_INFINITY;
  for (const command of commands) {
    if (command.to === 'close') continue;
    left = Math.min(left, command.x);
    right = Math.max(right, command.x);
    bottom = Math.min(bottom, command.y);
    top = Math.max(top, command.y);
  }
  const size = Math.hypot(right - left, top - bottom);
  // A loop back to where it began, or nothing drawn: its own size says nothing.
  return size > 0 && Number.isFinite(size) ? size * PATH_FLATNESS : FLATNESS_MM;
}

/**
 * The drawn form itself, before turning, repeating and mirroring, as closed rings in cloth mm.
 * @param cloth a band runs from its left edge to its right edge.
 */
export function formRings(form: ShapeForm, cloth: Box): Float64Array[] {
  switch (form.kind) {
    case 'polygon':
      return form.points.length < 3 ? [] : [Float64Array.from(form.points.flatMap((point) => [point.x, point.y]))];
    case 'ellipse':
      return [ellipseRing(form.centre.x, form.centre.y, form.radiusX, form.radiusY)];
    case 'band': {
      const { left, right } = cloth;
      return [Float64Array.of(left, form.from, right, form.from, right, form.to, left, form.to)];
    }
    case 'arch':
      return [archRing(form)];
    case 'path':
      return flattenCommands(form.commands, pathFlatness(form.commands));
  }
}
