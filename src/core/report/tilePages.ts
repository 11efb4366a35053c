import { type PaperName, PRINT_MARGIN, papers } from './paper.ts';

/** One page of a drawing too large for one sheet. Row 1 is the lowest and column 1 the leftmost, as the cloth grows. */
export interface Tile {
  readonly row: number;
  readonly column: number;
  /** Lower left corner of what this page shows, mm in the drawing's frame. */
  readonly left: number;
  readonly bottom: number;
}

export interface Tiling {
  readonly paper: { readonly width: number; readonly height: number };
  /** Where the drawing is shown on every page, mm from the page's lower left corner. */
  readonly frame: { readonly left: number; readonly bottom: number; readonly width: number; readonly height: number };
  readonly rows: number;
  readonly columns: number;
  /** How much of the drawing neighbouring pages both show, mm. */
  readonly overlap: number;
  /** In the order they are printed: row by row from the bottom, each from the left. */
  readonly tiles: readonly Tile[];
}

/** What two neighbouring pages both show, mm: room to glue. */
export const OVERLAP = 12;
/** Kept free under the drawing for the check bar and the page's name, mm. */
const FOOT = 20;

const pagesAcross = (size: number, shown: number): number =>
  size <= shown ? 1 : Math.ceil((size - OVERLAP) / (shown - OVERLAP) - 1e-9);

/**
 * Cuts a true-scale drawing into pages that overlap, upright or lying, whichever takes fewer sheets (upright when
 * both take as many). The drawing is centred on the pages together.
 * @param width of the drawing, mm.
 * @param height of the drawing, mm.
 */
export function tilePages(width: number, height: number, paperName: PaperName): Tiling {
  const upright = papers[paperName];
  const lying = { width: upright.height, height: upright.width };
  const [first, second] = [upright, lying].map((paper) => {
    const frame = {
      left: PRINT_MARGIN,
      bottom: PRINT_MARGIN + FOOT,
      width: paper.width - 2 * PRINT_MARGIN,
      height: paper.height - 2 * PRINT_MARGIN - FOOT,
    };
    return { paper, frame, rows: pagesAcross(height, frame.height), columns: pagesAcross(width, frame.width) };
  }) as [Omit<Tiling, 'tiles' | 'overlap'>, Omit<Tiling, 'tiles' | 'overlap'>];
  const chosen = second.rows * second.columns < first.rows * first.columns ? second : first;
  const { frame, rows, columns } = chosen;
  const stepX = frame.width - OVERLAP;
  const stepY = frame.height - OVERLAP;
  const startX = (width - (columns * stepX + OVERLAP)) / 2;
  const startY = (height - (rows * stepY + OVERLAP)) / 2;
  const tiles: Tile[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      tiles.push({ row: row + 1, column: column + 1, left: startX + column * stepX, bottom: startY + row * stepY });
    }
  }
  return { ...chosen, overlap: OVERLAP, tiles };
}
