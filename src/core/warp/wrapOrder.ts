import type { Warp } from '../model/piece.ts';

export interface WrappedString {
  /** Place in the order of warping, 0-based. */
  readonly order: number;
  readonly end: number;
  /** 0-based from the left. */
  readonly notch: number;
  readonly direction: 'up' | 'down';
  /** Where the next string begins: over the same bar, in this notch or the next. */
  readonly loop: { readonly bar: 'top' | 'bottom'; readonly toNotch: number } | null;
}

/**
 * The order one long string is wound in, from the left, beginning at the bottom bar. A doubled end goes up and comes
 * down through its own notch, so each end is one loop over the top; a single warp goes up one notch and down the next.
 */
export function wrapOrder(warp: Warp): readonly WrappedString[] {
  const strings = warp.ends * warp.stringsPerEnd;
  const notchOf = (order: number) => warp.firstNotch + Math.floor(order / warp.stringsPerEnd);
  return Array.from({ length: strings }, (_, order) => {
    const direction = order % 2 === 0 ? 'up' : 'down';
    return {
      order,
      end: Math.floor(order / warp.stringsPerEnd),
      notch: notchOf(order),
      direction,
      loop: order === strings - 1 ? null : { bar: direction === 'up' ? 'top' : 'bottom', toNotch: notchOf(order + 1) },
    };
  });
}
