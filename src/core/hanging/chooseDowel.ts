import { gramsInWords, lengthInWords } from '../model/lengthWords.ts';
import type { Piece } from '../model/piece.ts';
import type { Arithmetic } from '../model/plan.ts';
import { type Grams, type Mm, mm } from '../model/units.ts';
import type { Verdict } from '../model/verdict.ts';
import { clothWidth } from '../warp/endWidth.ts';
import { creepShare, dowelSag } from './dowelSag.ts';

/** A quarter inch past the cloth at either side: an 8 in piece takes about 8½ in. Common practice, no source. */
const pastTheCloth = mm(6.35);
/** Round sticks as sold, mm; thinner ones snap between the fingers. */
const sold = [6, 8, 10, 12, 15, 18, 20, 22, 25, 28, 30, 35, 40].map(mm);

export interface Dowel {
  readonly length: Mm;
  readonly diameter: Mm;
  readonly sag: { readonly first: Mm; readonly later: Mm };
  readonly verdict: Verdict<'stiff-enough' | 'bows'>;
  readonly arithmetic: Arithmetic;
}

/** The thinnest dowel that stays within the weaver's bow under the piece, even after months. */
export function chooseDowel(piece: Piece, load: Grams): Dowel {
  const { units, making } = piece;
  const length = mm(clothWidth(piece.loom, piece.warp) + 2 * pastTheCloth);
  const thickest = sold.at(-1)!;
  const diameter = sold.find((size) => dowelSag(length, load, size).later <= making.dowelSag) ?? thickest;
  const sag = dowelSag(length, load, diameter);
  const fits = sag.later <= making.dowelSag;
  const bow = (value: number) => lengthInWords(value, units, 'edge');
  const why = `Under ${gramsInWords(load)} it bows ${bow(sag.first)} at first and ${bow(sag.later)} after months; ${bow(making.dowelSag)} is allowed.`;
  return {
    length,
    diameter,
    sag,
    verdict: fits
      ? {
          verdict: 'stiff-enough',
          sentence: `A dowel ${lengthInWords(diameter, units)} thick stays straight enough.`,
          why,
          remedy: null,
        }
      : {
          verdict: 'bows',
          sentence: 'No wooden dowel sold is stiff enough at this width.',
          why,
          remedy: 'Use a metal rod, or hang the dowel from its middle as well.',
        },
    arithmetic: {
      title: 'Dowel',
      lines: [
        {
          label: 'Length',
          working: `${lengthInWords(length - 2 * pastTheCloth, units)} of cloth + 2 × ${lengthInWords(pastTheCloth, units)}`,
          result: lengthInWords(length, units),
        },
        {
          label: 'Bow at first',
          working: `5 W L³ ÷ (384 E I), ${gramsInWords(load)} and its own weight on softwood ${lengthInWords(diameter, units)} thick`,
          result: bow(sag.first),
        },
        {
          label: 'Bow after months',
          working: `first bow × ${1 + creepShare}, because wood goes on bending`,
          result: bow(sag.later),
        },
      ],
    },
  };
}
