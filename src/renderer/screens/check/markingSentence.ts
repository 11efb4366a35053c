import type { Words } from '../../words/en.ts';
import { cornerNames, type Fit } from './fourPoints.ts';
import { lackingIn, lettersOf, type Marking, nextPlace, type Place } from './marking.ts';

type CheckWords = Words['check'];

/** What a place is called: in full for who listens, short beside the mark. */
export function placeName(
  marking: Marking,
  { thing, point }: Place,
  words: CheckWords,
): { readonly label: string; readonly short: string } {
  const { kind } = marking[thing]!;
  if (kind === 'length') {
    const letter = lettersOf(marking, thing)[point]!;
    return { label: words.lengthEnd(letter), short: letter };
  }
  if (kind === 'card') return { label: words.cardCorner(point + 1), short: words.cardCornerShort(point + 1) };
  const corner = words.corners[cornerNames[point]!];
  return { label: words.innerCorner(corner), short: corner };
}

/** What to touch or type next, or how the corners fit. */
export function sentenceOf(marking: Marking, fit: Fit | null, words: CheckWords): string {
  const next = nextPlace(marking);
  const lacking = lackingIn(marking);
  if (next !== null) {
    const { kind } = marking[next.thing]!;
    if (kind === 'length') return words.touchLengthEnd(next.point + 1);
    if (kind === 'card') return words.touchCardCorner(next.point + 1);
  }
  if (lacking?.kind === 'how-long') return words.sayHowLong(lacking.letters);
  if (next !== null) {
    const corner = words.corners[cornerNames[next.point]!];
    return lacking === null ? words.mayBeEnough(corner) : words.markCorner(corner);
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
