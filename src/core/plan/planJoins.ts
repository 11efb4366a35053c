import { turnExtra, weftPerEnd } from '../materials/weftCrimp.ts';
import type { Piece } from '../model/piece.ts';
import type { Chart, Join } from '../model/plan.ts';
import { mm } from '../model/units.ts';
import { byOrder, joinsOfWeft } from '../order/joins.ts';
import type { Stint } from '../order/orderStints.ts';
import type { Part } from '../order/parts.ts';
import type { Wefts } from '../order/wefts.ts';
import { weftDiameter } from '../yarn/yarnDiameter.ts';

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
    const geometry = {
      pitch: chart.pitch,
      stringDiameter: piece.warp.stringDiameter,
      stringsPerEnd: piece.warp.stringsPerEnd,
      // Where the yarn says nothing, a pass is half as high as the weft is thick: the measure its metres are taken by.
      weftDiameter: weftDiameter(yarn)?.diameter ?? mm(2 * piece.cloth.passHeight),
    };
    const lengths = {
      perEnd: weftPerEnd(geometry).length,
      turn: turnExtra(geometry, chart.passHeight),
      working: piece.making.workingLength * 1000,
      tail: piece.making.tail,
    };
    for (const { row, end } of joinsOfWeft(weft, lengths)) {
      const block = stintsOfWeft
        .get(index)!
        .find((order) => stints[order]!.first <= row && row <= stints[order]!.last)!;
      joins.push({ block, pass: weft.rows[row]!.pass, end });
    }
  });
  return joins.sort(byOrder);
}
