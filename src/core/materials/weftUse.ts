import type { Piece, Yarn } from '../model/piece.ts';
import { type Mm, mm } from '../model/units.ts';
import type { YarnSource } from '../yarn/linearDensity.ts';
import { weftDiameter } from '../yarn/yarnDiameter.ts';
import { turnExtra, type WeftPerEnd, weftPerEnd } from './weftCrimp.ts';

/** Where a figure came from; the last is for a yarn that says nothing: a pass is half as high as the weft is thick. */
export type UseSource = YarnSource | 'pass-height';

export interface WeftUse {
  readonly weft: { readonly diameter: Mm; readonly from: UseSource; readonly guess: boolean };
  readonly perEnd: WeftPerEnd;
  readonly turnExtra: Mm;
  /** True when the use was measured on cloth: turns are then in it already. */
  readonly measured: boolean;
}

/** How much weft a yarn takes for one end and for one turn on this warp: as measured, or by the model of crimp. */
export function weftUse(piece: Piece, yarn: Yarn): WeftUse {
  const { loom, warp, cloth } = piece;
  const known = weftDiameter(yarn);
  const weft: WeftUse['weft'] =
    known === null
      ? { diameter: mm(2 * cloth.passHeight), from: 'pass-height', guess: true }
      : { diameter: known.diameter, from: known.from, guess: known.guess };
  if (yarn.measuredUse != null) {
    const perEnd = { length: mm(loom.notchPitch * yarn.measuredUse), crimp: yarn.measuredUse - 1, crowded: false };
    return { weft, perEnd, turnExtra: mm(0), measured: true };
  }
  const geometry = {
    pitch: loom.notchPitch,
    stringDiameter: warp.stringDiameter,
    stringsPerEnd: warp.stringsPerEnd,
    weftDiameter: weft.diameter,
  };
  return { weft, perEnd: weftPerEnd(geometry), turnExtra: turnExtra(geometry, cloth.passHeight), measured: false };
}
