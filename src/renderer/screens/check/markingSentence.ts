import type { Words } from '../../words/en.ts';
import { cornerNames, type Fit } from './fourPoints.ts';
import { groupOf, groups, lackingIn, type Marking, nextPlace } from './marking.ts';

type CheckWords = Words['check'];

/** What a place is called: in full for who listens, short beside the mark. */
export function placeName(place: number, words: CheckWords): { readonly label: string; readonly short: string } {
  const group = groupOf(place);
  const number = place - groups[group][0];
  if (group === 'length') return { label: words.lengthEnd(number + 1), short: words.lengthEndShort(number + 1) };
  if (group === 'card') return { label: words.cardCorner(number + 1), short: words.cardCornerShort(number + 1) };
  const corner = words.corners[cornerNames[number]!];
  return { label: words.innerCorner(corner), short: corner };
}

/** What to touch next, or how the corners fit. */
export function sentenceOf(marking: Marking, fit: Fit | null, words: CheckWords): string {
  const next = nextPlace(marking);
  if (next >= 0) {
    const group = groupOf(next);
    const number = next - groups[group][0];
    if (group === 'length') return words.touchLengthEnd(number + 1);
    if (group === 'card') return words.touchCardCorner(number + 1);
    const corner = words.corners[cornerNames[number]!];
    return lackingIn(marking) === null ? words.mayBeEnough(corner) : words.markCorner(corner);
  }
  switch (fit?.kind) {
    case 'doubtful':
      return words.pointsDoubtful(Math.round(Math.abs(fit.tooWide) * 100), fit.tooWide > 0);
    case 'mirrored':
      return words.pointsMirrored;
    case 'crossed':
      return words.pointsCrossed;
    default:
      return words.pointsFit;
  }
}
