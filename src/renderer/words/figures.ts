import { type DeviationAxis, deviationAsFinding, deviationInRow } from '../../core/model/deviationWords.ts';
import type { LengthUnits } from '../../core/model/lengthWords.ts';
import type { Measurement } from '../../core/model/measurement.ts';
import { tell } from './telling.ts';

/** A row's figure with its side, in the weaver's language: `0.5 mm in ± 0.4`. */
export const rowFigure = (deviation: Measurement, axis: DeviationAxis, units: LengthUnits): string =>
  // The give or take stays beside its sign where the row breaks.
  tell(deviationInRow(deviation, axis, units)).replace('± ', '±\u00a0');

/** A finding's two lines in the weaver's language: `3.1 mm in` and `give or take 0.4`. */
export function finding(deviation: Measurement, axis: DeviationAxis, units: LengthUnits) {
  const said = deviationAsFinding(deviation, axis, units);
  return { figure: tell(said.figure), giveOrTake: tell(said.giveOrTake), spread: said.spread };
}
