const INCH = 25.4;

/** The largest of 0.01, 0.02, 0.05, 0.1 … that isn't beyond `room`. */
function decimalStep(room: number): number {
  const power = 10 ** Math.floor(Math.log10(room));
  const share = room / power;
  return (share >= 5 ? 5 : share >= 2 ? 2 : 1) * power;
}

/**
 * How far from the plan a figure's two ticks stand, mm: a round figure in the unit they are read in, inside the plot.
 * @param reach from the plan to the plot's edge, mm
 * @param read how the tick is written: in mm, as a fraction of an inch, or as a decimal of an inch
 */
export function tickStep(reach: number, read: 'mm' | 'fraction' | 'decimal-inch'): number {
  const room = reach * 0.75;
  if (read === 'mm') return decimalStep(room);
  if (read === 'decimal-inch') return decimalStep(room / INCH) * INCH;
  return Math.max(1 / 32, 2 ** Math.floor(Math.log2(room / INCH))) * INCH;
}
