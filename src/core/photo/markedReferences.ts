import { inBothUnits } from '../model/bothUnits.ts';
import { lengthInWords } from '../model/lengthWords.ts';
import type { Marks } from '../model/marks.ts';
import type { Reference } from './agreeingMarks.ts';
import { cardEvidence, cornerEvidence, lengthEvidence, type MarkedPicture } from './markEvidence.ts';

const cornerNames = [
  'The bottom left corner',
  'The bottom right corner',
  'The top right corner',
  'The top left corner',
] as const;

/** Everything that was marked, each as a reference of its own. */
export function markedReferences(marks: Marks, picture: MarkedPicture): Reference[] {
  const corners = marks.corners.flatMap((corner, k): Reference[] =>
    corner === null
      ? []
      : [{ kind: 'corner', name: inBothUnits(() => cornerNames[k]!), evidence: cornerEvidence(corner, k, picture) }],
  );
  const lengths = marks.lengths.map(
    ({ from, to, length }): Reference => ({
      kind: 'length',
      name: inBothUnits((units) => `The length of ${lengthInWords(length, units, 'edge')}`),
      evidence: lengthEvidence(from, to, length, picture),
    }),
  );
  const card: Reference[] =
    marks.card === null
      ? []
      : [{ kind: 'card', name: inBothUnits(() => 'The card'), evidence: cardEvidence(marks.card, picture) }];
  return [...corners, ...lengths, ...card];
}
