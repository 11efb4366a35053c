import type { CheckRecord } from '../../../core/model/check.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { plannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import type { Words } from '../../words/en.ts';
import { edgeAtFell } from '../check/agreeing.ts';
import { checkSentence } from '../check/checkSentence.ts';

/** What changed since last time, in one sentence. */
export function recordSentence(
  earlier: CheckRecord | null,
  later: CheckRecord | null,
  piece: Piece,
  words: Words,
): string {
  if (later === null) return words.record.sentenceNone;
  const edges = plannedSelvedges(piece, later.reading.selvedge);
  if (earlier === null) {
    const dismissed = later.dismissed.map((each) => each.flag);
    return checkSentence(later.reading, edges, dismissed, piece.making.allowance, piece.units, words.check);
  }
  let comparable = false;
  const moves = (['left', 'right'] as const).flatMap((side) => {
    const before = edgeAtFell(earlier.reading, edges, side);
    const after = edgeAtFell(later.reading, edges, side);
    if (before === null || after === null) return [];
    comparable = true;
    const change = after.value - before.value;
    return Math.abs(change) > 2 * Math.hypot(before.sigma, after.sigma) ? [{ side, change }] : [];
  });
  const largest = moves.sort((one, other) => Math.abs(other.change) - Math.abs(one.change))[0];
  if (largest === undefined) {
    return comparable ? words.record.sentenceHeld : words.record.sentenceNothingToCompare;
  }
  return words.record.sentenceMoved(words.check.edges[largest.side], largest.change < 0);
}
