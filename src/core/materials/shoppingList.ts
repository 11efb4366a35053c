import { gramsInWords, yarnLengthInWords } from '../model/lengthWords.ts';
import { countInWords } from '../model/numberWords.ts';
import type { Piece } from '../model/piece.ts';
import type { Materials } from './materials.ts';

export interface ShoppingLine {
  readonly item: string;
  readonly amount: string;
  /** What to know when buying; empty when there is nothing. */
  readonly note: string;
}

/**
 * What to buy or find at home, in the order a weaver would look for it.
 * @param others dowel, cord, fibre and the like, from whoever worked them out.
 */
export function shoppingList(
  piece: Piece,
  materials: Materials,
  others: readonly ShoppingLine[] = [],
): readonly ShoppingLine[] {
  const { units } = piece;
  const { warp } = materials;
  const lines: ShoppingLine[] = [
    {
      item: piece.warp.yarnName,
      amount: `${yarnLengthInWords(warp.length, units)}, ${gramsInWords(warp.grams)}`,
      note: warp.gramsGuess ? 'The weight is a guess from its thickness; buy by length.' : '',
    },
  ];
  for (const need of materials.yarns) {
    if (need.metres === 0) continue;
    const balls = need.balls === null ? '' : `, ${countInWords(need.balls, 'ball')}`;
    lines.push({
      item: need.name,
      amount: `${yarnLengthInWords(need.metres, units)}, ${gramsInWords(need.grams)}${balls}`,
      note: need.density.guess
        ? 'The weight is a guess; buy by length, or type what the label says.'
        : need.density.from === 'count'
          ? 'By its count. A ball’s label is nearer the truth.'
          : '',
    });
  }
  return [...lines, ...others];
}
