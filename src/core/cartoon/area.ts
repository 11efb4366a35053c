import type { Box } from '../geometry/box.ts';
import type { Shape } from '../model/piece.ts';
import { type Outline, outlinesOf, spansAt } from './outline.ts';

/** Area enclosed by a ring, positive when it runs anticlockwise with y up. Exact; a crossing ring counts signed. */
export function signedRingArea(ring: Float64Array): number {
  let twice = 0;
  const originX = ring[0] ?? 0;
  const originY = ring[1] ?? 0;
  for (let at = 0; at < ring.length; at += 2) {
    const next = (at + 2) % ring.length;
    twice += (ring[at]! - originX) * (ring[next + 1]! - originY) - (ring[next]! - originX) * (ring[at + 1]! - originY);
  }
  return twice / 2;
}

/** Strips are no taller than this, mm, so that rings that cross between two corners are followed closely. */
const tallestStrip = 0.25;
/** Past this many corners, levels between them are merged: the area stays good to a few parts in 100 000. */
const mostLevels = 4000;

/**
 * Filled area of an outline, mm². Between two neighbouring corner heights the covered width changes along a straight
 * line, so its value half way up times the strip's height is exact, unless edges cross inside the strip.
 */
export function outlineArea(outline: Outline): number {
  const heights = new Set<number>();
  for (const ring of outline.rings) for (let at = 1; at < ring.length; at += 2) heights.add(ring[at]!);
  let levels = [...heights].sort((one, other) => one - other);
  const { bottom, top } = outline.box;
  if (levels.length > mostLevels) {
    levels = Array.from({ length: mostLevels + 1 }, (_, at) => bottom + ((top - bottom) * at) / mostLevels);
  }
  const mayCross = !(outline.rings.length === 1 && outline.rings[0]!.length <= 6);
  let area = 0;
  for (let at = 1; at < levels.length; at++) {
    const from = levels[at - 1]!;
    const height = levels[at]! - from;
    const strips = mayCross ? Math.min(2000, Math.max(1, Math.ceil(height / tallestStrip))) : 1;
    for (let strip = 0; strip < strips; strip++) {
      const spans = spansAt(outline, from + ((strip + 0.5) * height) / strips);
      for (let span = 0; span + 1 < spans.length; span += 2) {
        area += ((spans[span + 1]! - spans[span]!) * height) / strips;
      }
    }
  }
  return area;
}

/** Area of one copy of a shape as drawn, mm²; not less what other shapes cover or what lies off the cloth. */
export function shapeArea(shape: Shape, cloth: Box): number {
  const { form } = shape;
  switch (form.kind) {
    case 'ellipse':
      return Math.PI * form.radiusX * form.radiusY;
    case 'arch':
      return form.width * form.springing + (Math.PI * form.width * form.rise) / 4;
    case 'band':
      return (cloth.right - cloth.left) * Math.abs(form.to - form.from);
    case 'polygon':
    case 'path': {
      const outline = outlinesOf(
        { ...shape, rotation: 0 as Shape['rotation'], mirrorAbout: null, repeat: null },
        cloth,
      )[0];
      return outline === undefined ? 0 : outlineArea(outline);
    }
  }
}
