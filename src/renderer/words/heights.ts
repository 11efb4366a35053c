import type { LengthKind, LengthUnits } from '../../core/model/lengthWords.ts';
import type { Words } from './en.ts';
import { lengthSaid } from './figures.ts';

/** A height with its side, never a minus sign: `67 mm up`, `0.4 mm below the base`. */
export const heightSaid = (height: number, units: LengthUnits, kind: LengthKind, words: Words['check']): string =>
  words.height(lengthSaid(Math.abs(height), units, kind), height < 0);
