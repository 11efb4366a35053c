import {
  type DeviationAxis,
  deviationInRow,
  type Finding,
  passInRow,
  sizeInRow,
} from '../../core/model/deviationWords.ts';
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
import { tell, tied } from './telling.ts';

// Figures as the weaver's language writes them: every figure on screen comes through here or through `tell`.
const language = () => useSettings.getState().settings.language;

/** A length with its unit, as it stands in a field and is typed there. @param length mm. */
export const typedLength = (length: number, units: LengthUnits, kind?: LengthKind): string =>
  lengthIn(language(), lengthInWords(length, units, kind));

/** A length with its unit. @param length mm. */
export const lengthSaid = (length: number, units: LengthUnits, kind?: LengthKind): string =>
  tied(typedLength(length, units, kind));

/** A length of yarn with its unit. @param metres m. */
export const yarnLengthSaid = (metres: number, units: LengthUnits): string =>
  tied(lengthIn(language(), yarnLengthInWords(metres, units)));

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

/** A size that lies on no side, in a row: `3.1 mm ± 0.4`. */
export const sizeFigure = (size: Measurement, units: LengthUnits): string =>
  tell(sizeInRow(size, units)).replace('± ', '±\u00a0');

/** The height of a pass with its give or take: `1.06 mm ± 0.01`. */
export const passFigure = (pass: Measurement, units: LengthUnits): string =>
  tell(passInRow(pass, units)).replace('± ', '±\u00a0');

/** A finding's two lines in the weaver's language: `3.1 mm in` and `give or take 0.4`. */
export function findingSaid(said: Finding) {
  return { figure: tell(said.figure), giveOrTake: tell(said.giveOrTake), spread: figuresIn(language(), said.spread) };
}
