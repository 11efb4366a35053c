import { lengthInWords } from '../model/lengthWords.ts';
import type { Piece } from '../model/piece.ts';
import { type Mm, mm } from '../model/units.ts';
import type { Verdict } from '../model/verdict.ts';

/** What an overhand knot of a few strings uses up. Common practice, no source. */
const knot = mm(25);

export interface Fringe {
  /** Hanging length after knotting. */
  readonly length: Mm;
  readonly verdict: Verdict<'as-wished' | 'shorter-than-wished' | 'none'>;
}

/** The fringe below the cloth: as long as wished, or as long as the strings under it allow. */
export function fringeOf(piece: Piece): Fringe {
  const { making, cloth, units } = piece;
  const strings = cloth.baseAboveBottomBar;
  const longest = mm(Math.max(0, strings - knot));
  const words = (length: number) => lengthInWords(length, units);
  const why = `The strings below the cloth are ${words(strings)}, and a knot takes ${words(knot)} of them.`;
  if (making.fringe === 0) {
    const remedy = strings >= 50 ? null : 'Needle each string back beside its neighbour.';
    return { length: mm(0), verdict: { verdict: 'none', sentence: 'No fringe is wished for.', why, remedy } };
  }
  if (making.fringe <= longest) {
    const sentence = `The fringe hangs ${words(making.fringe)} below the knots.`;
    return { length: making.fringe, verdict: { verdict: 'as-wished', sentence, why, remedy: null } };
  }
  return {
    length: longest,
    verdict: {
      verdict: 'shorter-than-wished',
      sentence: `The fringe can be ${words(longest)}, not ${words(making.fringe)}.`,
      why,
      remedy: `Start the cloth ${words(making.fringe + knot)} above the bar for the whole of it, or tie longer strings in.`,
    },
  };
}
