import { palette } from './palette.ts';
import type { Pen } from './pen.ts';

/** A bar of exactly 100 mm to lay a ruler on: lower left corner at (x, y). */
export function drawCheckBar(pen: Pen, x: number, y: number): void {
  const height = 3;
  for (let part = 0; part < 10; part++) {
    pen.box(x + 10 * part, y, 10, height, part % 2 === 0 ? palette.ink : palette.white);
  }
  pen.line(x, y, x + 100, y, { width: 0.2 });
  pen.line(x, y + height, x + 100, y + height, { width: 0.2 });
  pen.line(x + 100 - 0.1, y, x + 100 - 0.1, y + height, { width: 0.2 });
  pen.text('0', x, y + height + 1, { size: 7 });
  pen.text('50', x + 50, y + height + 1, { size: 7, align: 'middle' });
  pen.text('100 mm', x + 100, y + height + 1, { size: 7, align: 'right', face: 'strong' });
}
