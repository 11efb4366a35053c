import { lengthInWords } from '../model/lengthWords.ts';
import { countInWords, numberInWords } from '../model/numberWords.ts';
import type { Piece, Yarn } from '../model/piece.ts';
import { type Mm, mm } from '../model/units.ts';
import { bundleDiameter, weftDiameter, yarnDiameter } from '../yarn/yarnDiameter.ts';
import { endGap, endWidth } from './endWidth.ts';

/** The gap a weft likes best, in its own thicknesses: the rule of thumb is 1, and up to 2 still holds the ends. */
const likes = { least: 1, most: 2 } as const;

export interface SuggestedWeft {
  readonly thinnest: Mm;
  readonly thickest: Mm;
  readonly words: string;
}

/** The weft that suits a loom's notches and this warp. */
export function suggestedWeft(piece: Piece): SuggestedWeft | null {
  const gap = endGap(piece.loom, piece.warp);
  if (gap <= 0) return null;
  const [thinnest, thickest] = [mm(gap / likes.most), mm(gap / likes.least)];
  const edge = (length: number) => lengthInWords(length, piece.units, 'edge');
  const wraps = (diameter: number) => numberInWords(10 / diameter, 1);
  const words = `A weft ${edge(thinnest)} to ${edge(thickest)} thick, ${wraps(thickest)} to ${wraps(thinnest)} wraps to the centimetre.`;
  return { thinnest, thickest, words };
}

export interface SuggestedPitch {
  readonly closest: Mm;
  readonly widest: Mm;
}

/** The distance between ends that suits a yarn on this warp; null when nothing says how thick the yarn is. */
export function suggestedPitch(piece: Piece, yarn: Yarn): SuggestedPitch | null {
  const weft = weftDiameter(yarn);
  if (weft === null) return null;
  const width = endWidth(piece.warp);
  return { closest: mm(width + likes.least * weft.diameter), widest: mm(width + likes.most * weft.diameter) };
}

/** How many strands of a yarn to wind together so that it suits the gap; null when none up to 12 does. */
export function strandsThatSuit(piece: Piece, yarn: Yarn): number | null {
  const strand = yarnDiameter(yarn);
  const gap = endGap(piece.loom, piece.warp);
  if (strand === null) return null;
  for (let strands = 1; strands <= 12; strands += 1) {
    const ratio = gap / bundleDiameter(strand.diameter, strands);
    if (ratio >= likes.least && ratio <= likes.most) return strands;
  }
  return null;
}

/** Sentences for a weft that is too thick or too thin for the ends it has. */
export function settSuggestion(piece: Piece, yarn: Yarn): { readonly thinner: string; readonly thicker: string } {
  const weft = suggestedWeft(piece);
  const strands = strandsThatSuit(piece, yarn);
  const pitch = suggestedPitch(piece, yarn);
  const wind =
    strands === null || strands === yarn.strands ? '' : ` Or wind ${countInWords(strands, 'strand')} of it together.`;
  const apart =
    pitch === null
      ? ''
      : ` This yarn suits ends ${lengthInWords(pitch.closest, piece.units, 'edge')} to ${lengthInWords(pitch.widest, piece.units, 'edge')} apart.`;
  const single = piece.warp.stringsPerEnd === 2 ? ' Or warp one string to an end.' : '';
  if (weft === null) {
    const thinner = 'The strings fill their notches: warp thinner string, or one string to an end.';
    return { thinner, thicker: thinner };
  }
  return { thinner: `${weft.words}${wind}${single}${apart}`, thicker: `${weft.words}${wind}${apart}` };
}
