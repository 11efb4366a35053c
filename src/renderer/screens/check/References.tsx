import type { ReferenceReading } from '../../../core/model/check.ts';
import { shortDate } from '../../words/dates.ts';
import { useWords } from '../../words/useWords.ts';

/** An earlier check among what a photograph was measured by, as the core names it, with its instant. */
const EARLIER = /^earlier check of (.+)$/;

/** What tied the photograph to millimetres, where an earlier check took part: the frame's own figures go without saying. */
export function References({ reference }: { readonly reference: ReferenceReading | null }) {
  const words = useWords().check.references;
  if (!reference?.parts.some((part) => EARLIER.test(part))) return null;
  const placed = reference.method === 'earlier-check';
  const named = reference.parts.map((part) => {
    const when = EARLIER.exec(part)?.[1];
    if (when === undefined) return words.parts[part] ?? part;
    return placed ? words.placedBy(shortDate(when)) : words.checkOf(shortDate(when));
  });
  const list = named.join(', ');
  return <p className="second">{placed ? `${list}.` : words.measuredBy(list)}</p>;
}
