import { weftUse } from '../materials/weftUse.ts';
import type { Piece } from '../model/piece.ts';
import type { Chart, Join } from '../model/plan.ts';
import { byOrder, joinsOfWeft } from '../order/joins.ts';
import type { Stint } from '../order/orderStints.ts';
import type { Part } from '../order/parts.ts';
import type { Wefts } from '../order/wefts.ts';

/** Where every working length runs out, by block. */
export function planJoins(
  piece: Piece,
  chart: Chart,
  wefts: Wefts,
  parts: readonly Part[],
  stints: readonly Stint[],
): readonly Join[] {
  const stintsOfWeft = new Map<number, number[]>();
  stints.forEach((stint, order) => {
    const { weft } = parts[stint.part]!;
    stintsOfWeft.set(weft, [...(stintsOfWeft.get(weft) ?? []), order]);
  });
  const joins: Join[] = [];
  wefts.wefts.forEach((weft, index) => {
    const first = weft.rows[0]!;
    const yarn = piece.yarns[chart.cells[first.pass * chart.ends + first.low]!]!;
    const use = weftUse(piece, yarn);
    const lengths = {
      perEnd: use.perEnd.length,
      turn: use.turnExtra,
      working: piece.making.workingLength * 1000,
      tail: piece.making.tail,
    };
    for (const { row, end } of joinsOfWeft(weft, lengths)) {
      const block = stintsOfWeft.get(index)?.find((order) => stints[order]!.first <= row && row <= stints[order]!.last);
      // Rows that stand on the loom already are joined already.
      if (block !== undefined) joins.push({ block, pass: weft.rows[row]!.pass, end });
    }
  });
  return joins.sort(byOrder);
}
