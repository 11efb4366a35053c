import { compareReading } from '../../../core/compare/compareReading.ts';
import { edgeCourse } from '../../../core/compare/edgeCourse.ts';
import type { CheckRecord } from '../../../core/model/check.ts';
import type { Piece } from '../../../core/model/piece.ts';
import type { Words } from '../../words/en.ts';
import { checkSentence } from '../check/checkSentence.ts';
import { edgeAtFell } from '../check/edgeRows.ts';

/** What changed since last time, in one sentence. */
export function recordSentence(
  earlier: CheckRecord | null,
  later: CheckRecord | null,
  piece: Piece,
  words: Words,
): string {
  if (later === null) return words.record.sentenceNone;
  if (earlier === null) {
    const dismissed = later.dismissed.map((each) => each.flag);
    return checkSentence(
      later.reading,
      compareReading(later.reading, piece),
      dismissed,
      piece.making.allowance,
      piece.units,
      words.check,
    );
  }
  let comparable = false;
  const moves = (['left', 'right'] as const).flatMap((side) => {
    const before = edgeAtFell(edgeCourse(earlier.reading, piece, side));
    const after = edgeAtFell(edgeCourse(later.reading, piece, side));
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
