import type { Box } from '../geometry/box.ts';
import { flattenCommands } from '../geometry/flattenCommands.ts';
import type { ShapeForm } from '../model/piece.ts';

/** Curves are followed to within this, mm. */
export const FLATNESS_MM = 0.02;

/** Equal steps of angle for a quarter ellipse whose chords stray by at most the flatness. */
function quarterSteps(radius: number): number {
  if (radius <= FLATNESS_MM) return 1;
  return Math.max(2, Math.ceil(Math.PI / 4 / Math.acos(1 - FLATNESS_MM / radius)));
}

/** Points of a quarter ellipse from (radiusX, 0) to (0, radiusY), both included. */
function quarterEllipse(radiusX: number, radiusY: number): [number, number][] {
  const steps = quarterSteps(Math.max(radiusX, radiusY));
  const points: [number, number][] = [[radiusX, 0]];
  for (let step = 1; step < steps; step++) {
    const angle = (step / steps) * (Math.PI / 2);
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
      return flattenCommands(form.commands, FLATNESS_MM);
  }
}
