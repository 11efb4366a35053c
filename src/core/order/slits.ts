import type { SteppedChart } from '../chart/makeChart.ts';
import type { Piece } from '../model/piece.ts';
import type { Slit } from '../model/plan.ts';
import type { Wefts } from './wefts.ts';

/** A gap shorter than this share of the weaver's limit is an ordinary step and not listed. */
const LISTED = 0.5;

/** Whether a slit needs nothing done: it is no longer than the weaver allows. */
export const mayStayOpen = ({ lengthMm }: Pick<Slit, 'lengthMm'>, { making }: Pick<Piece, 'making'>): boolean =>
  lengthMm <= making.slitLimit;

function remedyFor(lengthMm: number, piece: Piece, end: number): string {
  if (mayStayOpen({ lengthMm }, piece)) return 'Short enough to leave open.';
  return `Share end ${end + 1} every second turn while weaving, or sew it before hanging.`;
}

/**
 * The slits of a chart: where two wefts turn on neighbouring ends for passes on end and nothing crosses between them.
 * @param linked whether the wefts on both sides of a cell's left border are looped into each other there.
 * @returns lowest first, then from the left; toPass is the last pass of the slit.
 */
export function findSlits(
  piece: Piece,
  stepped: SteppedChart,
  wefts: Wefts,
  linked: (cell: number) => boolean,
): readonly Slit[] {
  const { ends, passes, passHeight } = stepped.chart;
  const slits: Slit[] = [];
  for (let end = 1; end < ends; end++) {
    let from = -1;
    for (let pass = 0; pass <= passes; pass++) {
      const cell = pass * ends + end;
      const open = pass < passes && wefts.ofCell[cell] !== wefts.ofCell[cell - 1] && !linked(cell);
      if (open && from === -1) from = pass;
      if (open || from === -1) continue;
      const lengthMm = (pass - from) * passHeight;
      if (lengthMm >= piece.making.slitLimit * LISTED) {
        const remedy = remedyFor(lengthMm, piece, end);
        slits.push({ between: [end - 1, end], fromPass: from, toPass: pass - 1, lengthMm, remedy });
      }
      from = -1;
    }
  }
  return slits.sort((one, other) => one.fromPass - other.fromPass || one.between[0] - other.between[0]);
}
