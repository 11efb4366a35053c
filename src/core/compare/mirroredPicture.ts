import { makeChart } from '../chart/makeChart.ts';
import type { LoomReading } from '../model/check.ts';
import type { Piece } from '../model/piece.ts';
import { BARE } from '../model/plan.ts';

/** Cells in which a plan and its mirror image must differ before the cloth is asked which of the two it shows. */
const FEWEST_CELLS = 24;
/** Shares of those cells that must lie as in the mirror image, and may at most lie as planned. */
const TURNED = 0.75;
const AS_PLANNED = 0.35;

/** Whether the yarns seen in the cloth lie as in a mirror image of the plan, where the plan isn't its own mirror image. */
export function liesMirrored(colours: LoomReading['colours'], piece: Piece): boolean {
  if (!colours) return false;
  const { cells, ends, passes } = makeChart(piece).chart;
  let differ = 0;
  let planned = 0;
  let turned = 0;
  colours.rows.slice(0, passes).forEach((row, pass) => {
    row.forEach((yarn, end) => {
      const own = cells[pass * ends + end];
      const other = cells[pass * ends + (ends - 1 - end)];
      if (yarn < 0 || own === other || own === BARE || other === BARE) return;
      differ++;
      if (yarn === own) planned++;
      if (yarn === other) turned++;
    });
  });
  return differ >= FEWEST_CELLS && turned >= TURNED * differ && planned <= AS_PLANNED * differ;
}
