import { type ClothGrid, heightOfPasses } from '../chart/clothGrid.ts';
import type { Piece } from '../model/piece.ts';
import type { Chart } from '../model/plan.ts';

/** Where a shape begins and ends on the cloth, mm above its base. */
export interface Reach {
  readonly bottom: number;
  readonly top: number;
}

/** Where a shape lands. */
export interface Landing {
  readonly shape: string;
  readonly planned: Reach;
  /** If the old plan is kept with the beat as it is. */
  readonly unchanged: Reach;
  /** By the new plan. */
  readonly now: Reach;
}

function passesOf(chart: Chart, area: number): { readonly first: number; readonly last: number } | null {
  const first = chart.areas.indexOf(area);
  if (first === -1) return null;
  return { first: Math.floor(first / chart.ends), last: Math.floor(chart.areas.lastIndexOf(area) / chart.ends) };
}

/** Where every shape that shows lands, before and after a plan is made anew. */
export function landingsOf(
  piece: Piece,
  before: Chart,
  after: Chart,
  planned: ClothGrid,
  asWoven: ClothGrid,
): readonly Landing[] {
  return piece.shapes.flatMap((shape, index): Landing[] => {
    const old = passesOf(before, index + 1);
    const now = passesOf(after, index + 1);
    if (old === null || now === null) return [];
    const reach = (grid: ClothGrid, passes: { first: number; last: number }): Reach => ({
      bottom: heightOfPasses(grid, passes.first),
      top: heightOfPasses(grid, passes.last + 1),
    });
    return [
      { shape: shape.id, planned: reach(planned, old), unchanged: reach(asWoven, old), now: reach(asWoven, now) },
    ];
  });
}
