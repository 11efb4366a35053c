/** Where one piece of a stack lies: its page (0-based) and its lower edge above the page's foot, mm. */
export interface StackPlace {
  readonly page: number;
  readonly bottom: number;
}

/**
 * Stacks pieces from the foot of the page upward, as the cloth grows: the first lies lowest, and a piece that no longer
 * fits begins the next page at its foot.
 * @param heights mm, in order.
 * @param room height of a page, mm; a taller piece has a page to itself.
 * @param gap between two pieces, mm.
 */
export function stackFromFoot(heights: readonly number[], room: number, gap: number): StackPlace[] {
  let page = 0;
  let bottom = 0;
  return heights.map((height) => {
    if (bottom > 0 && bottom + height > room + 1e-9) {
      page++;
      bottom = 0;
    }
    const place = { page, bottom };
    bottom += height + gap;
    return place;
  });
}
