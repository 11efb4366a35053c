import type { LengthUnits } from '../../../core/model/lengthWords.ts';
import type { Measurement } from '../../../core/model/measurement.ts';
import { lengthSaid, numberSaid } from '../../words/figures.ts';

/** The height of a pass with its give or take: `1.06 mm ± 0.01`, `0.042 in ± 0.001`. */
export function passFigure({ value, sigma }: Measurement, units: LengthUnits): string {
  const [unit, decimals, least] = units === 'mm' ? [1, 2, 0.01] : [25.4, 3, 0.001];
  const said = (figure: number) => numberSaid(figure, decimals);
  return `${lengthSaid(value, units, 'pass-height')} ±\u00a0${said(Math.max(sigma / unit, least))}`;
}
