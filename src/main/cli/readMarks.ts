import type { KnownLength, Marks } from '../../core/model/marks.ts';
import { failure, type Outcome, success } from '../../core/model/outcome.ts';
import { mm, type PhotoPoint, photoPx } from '../../core/model/units.ts';

/** What was typed of marks, each as it stands on the command line. */
export interface TypedMarks {
  readonly points: string | null;
  readonly lengths: readonly string[];
  readonly card: string | null;
}

const LONGEST = 10_000;
const MOST_LENGTHS = 6;

/** `"x,y"` in px of the picture as displayed; null when it isn't two numbers. */
function readPoint(pair: string): PhotoPoint | null {
  const parts = pair.split(',');
  const [x, y] = parts.map(Number);
  if (parts.length !== 2 || parts.some((part) => part === '') || !Number.isFinite(x) || !Number.isFinite(y)) {
    return null;
  }
  return { x: photoPx(x!), y: photoPx(y!) };
}

const words = (typed: string): string[] => typed.trim().split(/\s+/);

/** Four corners, a dash for one that isn't marked; null when they aren't. */
function readCorners(typed: string): (PhotoPoint | null)[] | null {
  const corners = words(typed).map((word) => (word === '-' ? null : (readPoint(word) ?? 'wrong')));
  return corners.length === 4 && !corners.includes('wrong') ? (corners as (PhotoPoint | null)[]) : null;
}

function readLength(typed: string): KnownLength | null {
  const [one = '', other = '', long = '', ...more] = words(typed);
  const [from, to, length] = [readPoint(one), readPoint(other), long === '' ? Number.NaN : Number(long)];
  if (more.length > 0 || from === null || to === null || !(length > 0 && length <= LONGEST)) return null;
  return { from, to, length: mm(length) };
}

/** @returns null when nothing was typed. */
export function readMarks({ points, lengths, card }: TypedMarks): Outcome<Marks | null, 'wrong-use'> {
  const wrong = (sentence: string, remedy: string) => failure('wrong-use', sentence, remedy);
  if (points === null && lengths.length === 0 && card === null) return success(null);
  const corners = points === null ? [null, null, null, null] : readCorners(points);
  if (corners === null) {
    return wrong(
      'The points are not four pairs.',
      'Write them as "x,y x,y x,y x,y", in pixels of the picture as displayed, a dash for a corner that isn\'t marked.',
    );
  }
  const known = lengths.map(readLength);
  if (known.includes(null) || known.length > MOST_LENGTHS) {
    return wrong(
      'A length is not two pairs and a number.',
      'Write it as "x,y x,y MM", in pixels of the picture as displayed and millimetres; six at most.',
    );
  }
  const round = card === null ? null : words(card).map(readPoint);
  if (round !== null && (round.length !== 4 || round.includes(null))) {
    return wrong(
      'The card is not four pairs.',
      'Write its corners one after the other as "x,y x,y x,y x,y", in pixels of the picture as displayed.',
    );
  }
  return success({ corners, lengths: known as KnownLength[], card: round as PhotoPoint[] | null });
}
