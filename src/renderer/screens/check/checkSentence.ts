import type { Comparison } from '../../../core/compare/compareReading.ts';
import type { LoomReading } from '../../../core/model/check.ts';
import type { LengthUnits } from '../../../core/model/lengthWords.ts';
import type { Words } from '../../words/en.ts';
import { lengthSaid } from '../../words/figures.ts';
import { edgeAtFell } from './edgeRows.ts';

/** The one sentence a check opens with, as a neighbour could say it. */
export function checkSentence(
  reading: LoomReading,
  comparison: Comparison,
  dismissed: readonly number[],
  allowance: number,
  units: LengthUnits,
  words: Words['check'],
): string {
  const open = reading.flags.filter((_, index) => !dismissed.includes(index));
  const kinds = new Set(open.map((flag) => flag.kind));
  const only = open[0];
  if (only === undefined) {
    const figures = comparison.edges.map((course) => edgeAtFell(course)).filter((each) => each !== null);
    // A bound at twice the give or take, never less than the largest figure seen.
    const bound = Math.max(0, ...figures.map((each) => Math.abs(each.value) + 2 * each.sigma));
    if (figures.length === 0) return words.sentenceNothingToSay;
    if (figures.some((each) => Math.abs(each.value) > Math.max(allowance, 2 * each.sigma))) return words.sentenceOff;
    return words.sentenceAgrees(lengthSaid(Math.max(units === 'mm' ? 1 : 1.6, Math.ceil(bound)), units));
  }
  if (kinds.size === 1 || open.length === 1) {
    const one = open.length === 1;
    switch (only.kind) {
      case 'draw-in':
        return one ? words.sentenceOneEdge : words.sentenceBothEdges;
      case 'spreading':
        return words.sentenceSpreading;
      case 'tilt':
        return words.sentenceTilt;
      case 'uneven':
        return words.sentenceUneven;
      case 'beat':
        return words.sentenceBeat;
      case 'motif':
        return words.sentenceMotif;
      case 'count':
        return words.sentenceCount;
      case 'slack':
        return words.sentenceSlack;
    }
  }
  return words.sentenceSeveral(open.length);
}
