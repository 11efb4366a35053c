import { type LengthUnits, lengthInWords } from '../../core/model/lengthWords.ts';
import { MM_PER_INCH } from '../../core/model/units.ts';
import { palette } from './palette.ts';
import type { Pen } from './pen.ts';

/** Length of the bar, so that the weaver's own ruler has a line there: 100 mm or 4 in. */
const lengths: Readonly<Record<LengthUnits, number>> = { mm: 100, in: 4 * MM_PER_INCH };

/** The bar's length as it is written beside it. */
export const checkBarWords = (units: LengthUnits): string => lengthInWords(lengths[units], units);

/** A bar of exactly that length to lay a ruler on: lower left corner at (x, y). */
export function drawCheckBar(pen: Pen, x: number, y: number, units: LengthUnits): void {
  const height = 3;
  const length = lengths[units];
  const parts = units === 'mm' ? 10 : 8;
  for (let part = 0; part < parts; part++) {
    const at = x + (length * part) / parts;
    pen.box(at, y, length / parts, height, part % 2 === 0 ? palette.ink : palette.white);
  }
  pen.line(x, y, x + length, y, { width: 0.2 });
  pen.line(x, y + height, x + length, y + height, { width: 0.2 });
  pen.line(x + length - 0.1, y, x + length - 0.1, y + height, { width: 0.2 });
  pen.text('0', x, y + height + 1, { size: 7 });
  pen.text(units === 'mm' ? '50' : '2', x + length / 2, y + height + 1, { size: 7, align: 'middle' });
  pen.text(checkBarWords(units), x + length, y + height + 1, { size: 7, align: 'right', face: 'strong' });
}
