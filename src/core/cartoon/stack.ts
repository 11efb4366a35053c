import type { Shape } from '../model/piece.ts';

/** Where a shape goes in the pile: the list runs from the topmost down. */
export type StackMove = 'up' | 'down' | 'top' | 'bottom';

/** The shapes with one of them moved in the pile; the others keep their order. */
export function restack(shapes: readonly Shape[], id: string, move: StackMove): readonly Shape[] {
  const from = shapes.findIndex((shape) => shape.id === id);
  if (from < 0) return shapes;
  const to = { up: from - 1, down: from + 1, top: 0, bottom: shapes.length - 1 }[move];
  const place = Math.min(shapes.length - 1, Math.max(0, to));
  return place === from ? shapes : shapes.toSpliced(from, 1).toSpliced(place, 0, shapes[from]!);
}
