import { boundaryRows, cellsOf, type ShownAreas } from './shownAreas.ts';

/** Share of a shape's area that may be gained or lost; a cell for each row with an edge is always allowed. */
const AREA_KEPT = 0.01;

/** Cells that go from one area to another. */
export interface Gift {
  readonly loses: number;
  readonly gains: number;
  readonly cells: number;
}

/** How far the shapes of a chart stand from the areas drawn, while cells are still given from one to another. */
export interface AreaBudget {
  /** Cells by which a shape is out by more than it may be; 0 for the ground and the header. */
  readonly excess: (area: number) => number;
  /** By how much a gift would raise the excess of both areas; below 0 where it mends more than it spoils. */
  readonly cost: (gift: Gift) => number;
  readonly give: (gift: Gift) => void;
}

/**
 * @param sampled areas of the cells before any stepping: level edges lie on whole passes and upright ones between ends,
 * whatever the stepping does, so no shape is asked to be nearer to the drawing than these are.
 * @param areas of the cells as they stand.
 */
export function areaBudget(shown: ShownAreas, sampled: Uint16Array, areas: Uint16Array, ends: number): AreaBudget {
  const count = shown.cells.length;
  const rows = boundaryRows(shown, areas, ends);
  const middles = cellsOf(sampled, count);
  // What each shape has too much, in cells.
  const much = cellsOf(areas, count).map((cells, area) => cells - shown.cells[area]!);
  const allowed = much.map((_, area) =>
    Math.max(AREA_KEPT * shown.cells[area]!, rows[area]!, Math.abs(middles[area]! - shown.cells[area]!)),
  );
  const excess = (area: number, more = 0): number =>
    area === 0 || area >= count ? 0 : Math.max(0, Math.abs(much[area]! + more) - allowed[area]!);
  return {
    excess,
    cost: ({ loses, gains, cells }) => excess(loses, -cells) + excess(gains, cells) - excess(loses) - excess(gains),
    give: ({ loses, gains, cells }) => {
      if (loses < count) much[loses]! -= cells;
      if (gains < count) much[gains]! += cells;
    },
  };
}
