import { type DeviationAxis, deviationAsFinding, deviationInRow } from '../../core/model/deviationWords.ts';
import {
  inchesInWords,
  type LengthKind,
  type LengthUnits,
  lengthInWords,
  yarnLengthInWords,
} from '../../core/model/lengthWords.ts';
import type { Measurement } from '../../core/model/measurement.ts';
import { countInWords, numberInWords } from '../../core/model/numberWords.ts';
import { figuresIn, lengthIn } from '../../core/words/telling.ts';
import { useSettings } from '../state/settingsStore.ts';
import { tell } from './telling.ts';

// Figures as the weaver's language writes them: every figure on screen comes through here or through `tell`.
const language = () => useSettings.getState().settings.language;

/** A length with its unit. @param length mm. */
export const lengthSaid = (length: number, units: LengthUnits, kind?: LengthKind): string =>
  lengthIn(language(), lengthInWords(length, units, kind));

/** A length of yarn with its unit. @param metres m. */
export const yarnLengthSaid = (metres: number, units: LengthUnits): string =>
  lengthIn(language(), yarnLengthInWords(metres, units));

export const inchesSaid = (inches: number, denominator: number): string =>
  figuresIn(language(), inchesInWords(inches, denominator));

export const numberSaid = (value: number, decimals?: number): string =>
  figuresIn(language(), numberInWords(value, decimals));

export const countSaid = (count: number, one: string, many?: string): string =>
  figuresIn(language(), countInWords(count, one, many));

/** A figure with as many decimals as it has, at most six figures in all: as it is typed. */
export const typedFigure = (value: number): string => figuresIn(language(), String(Number(value.toPrecision(6))));

/** A row's figure with its side, in the weaver's language: `0.5 mm in ± 0.4`. */
export const rowFigure = (deviation: Measurement, axis: DeviationAxis, units: LengthUnits): string =>
  // The give or take stays beside its sign where the row breaks.
  tell(deviationInRow(deviation, axis, units)).replace('± ', '±\u00a0');

/** A finding's two lines in the weaver's language: `3.1 mm in` and `give or take 0.4`. */
export function finding(deviation: Measurement, axis: DeviationAxis, units: LengthUnits) {
  const said = deviationAsFinding(deviation, axis, units);
  return { figure: tell(said.figure), giveOrTake: tell(said.giveOrTake), spread: figuresIn(language(), said.spread) };
}
