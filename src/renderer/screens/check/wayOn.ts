import type { Reason } from '../../../core/model/check.ts';
import type { Marks } from '../../../core/model/marks.ts';
import type { PieceField } from '../../state/shellStore.ts';

/**
 * What would let a photograph be measured that wasn't: another photograph, another figure on Piece, another look at what
 * was marked, or the word of whether the camera turns its pictures over.
 */
export type WayOn =
  | { readonly kind: 'photograph' | 'marks' | 'camera' }
  | { readonly kind: 'plan' | 'loom'; readonly field: PieceField };

/** @param marks what was marked in the photograph; null when nothing was. */
export function wayOn(reason: Reason | undefined, marks: Marks | null): WayOn {
  switch (reason?.code) {
    case 'wrong-count':
      return { kind: 'plan', field: 'ends' };
    case 'wrong-pitch':
      return { kind: 'plan', field: 'notchPitch' };
    case 'points-do-not-fit':
      return { kind: 'marks' };
    case 'references-disagree':
      return marks === null ? { kind: 'loom', field: reason.figure ?? 'openingWidth' } : { kind: 'marks' };
    case 'maybe-mirrored':
      return { kind: 'camera' };
    default:
      return { kind: 'photograph' };
  }
}
