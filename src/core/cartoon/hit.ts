import type { Box } from '../geometry/box.ts';
import type { Shape } from '../model/piece.ts';
import { covers, type Outline, outlinesOf } from './outline.ts';

/** Nearest place on an edge. */
export interface EdgeHit {
  /** Copy of the shape (0 the shape itself), ring, and the corner at which the edge ends. */
  readonly copy: number;
  readonly ring: number;
  readonly corner: number;
  /** Share of the way along that edge, 0 to 1. */
  readonly along: number;
  /** mm. */
  readonly distance: number;
}

/** @returns the nearest place on the outlines' edges to (x, y); null when there are no edges. */
export function nearestEdge(outlines: readonly Outline[], x: number, y: number): EdgeHit | null {
  let best: EdgeHit | null = null;
  for (const [copy, outline] of outlines.entries()) {
    for (const [ring, points] of outline.rings.entries()) {
      for (let at = 0; at < points.length; at += 2) {
        const before = at === 0 ? points.length - 2 : at - 2;
        const fromX = points[before]!;
        const fromY = points[before + 1]!;
        const dx = points[at]! - fromX;
        const dy = points[at + 1]! - fromY;
        const length = dx * dx + dy * dy;
        const along = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - fromX) * dx + (y - fromY) * dy) / length));
        const distance = Math.hypot(x - fromX - along * dx, y - fromY - along * dy);
        if (best === null || distance < best.distance) best = { copy, ring, corner: at / 2, along, distance };
      }
    }
  }
  return best;
}

/**
 * The shape under a place on the cloth: the topmost one shown that covers it, else the one whose edge is nearest
 * within `reach` mm (so a thin shape can be taken hold of). Null is the ground.
 */
export function shapeAt(shapes: readonly Shape[], x: number, y: number, cloth: Box, reach: number): Shape | null {
  const shown = shapes.filter((shape) => !shape.hidden).map((shape) => ({ shape, outlines: outlinesOf(shape, cloth) }));
  for (const { shape, outlines } of shown) {
    if (outlines.some((outline) => covers(outline, x, y))) return shape;
  }
  let nearest: { shape: Shape; distance: number } | null = null;
  for (const { shape, outlines } of shown) {
    const near = outlines.filter(
      ({ box }) => x >= box.left - reach && x <= box.right + reach && y >= box.bottom - reach && y <= box.top + reach,
    );
    const distance = nearestEdge(near, x, y)?.distance ?? Number.POSITIVE_INFINITY;
    if (distance <= reach && (nearest === null || distance < nearest.distance)) nearest = { shape, distance };
  }
  return nearest?.shape ?? null;
}
