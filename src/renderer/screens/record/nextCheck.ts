import type { CheckSummary } from '../../../core/contract/hostApi.ts';
import type { Piece } from '../../../core/model/piece.ts';

/** Turns until the next look: soon when something was flagged, else later. Common practice, no source. */
const SOON = 6;
const LATER = 20;

/** Where the next check is worth taking; null before the first, and at the top. */
export function nextCheck(
  last: CheckSummary | undefined,
  piece: Piece,
): { readonly heightMm: number; readonly turns: number } | null {
  if (last?.fellMm == null) return null;
  const turns = last.flags.length > 0 ? SOON : LATER;
  const heightMm = last.fellMm + turns * 2 * (last.passMm ?? piece.cloth.passHeight);
  return heightMm >= piece.cloth.height ? null : { heightMm, turns };
}
