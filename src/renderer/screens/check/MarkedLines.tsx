import { groups } from './marking.ts';
import type { PlainPoint } from './plainPoint.ts';

interface MarkedLinesProps {
  readonly places: readonly (PlainPoint | null)[];
  /** Screen px per photograph px, and where the photograph begins in the box. */
  readonly scale: number;
  readonly left: number;
  readonly top: number;
}

/** The length and the card as lines between their marks, light on dark so that they show on any photograph. */
export function MarkedLines({ places, scale, left, top }: MarkedLinesProps) {
  const line = (of: readonly number[], closed: boolean) => {
    const marked = of.flatMap((place) => places[place] ?? []);
    if (marked.length < 2) return null;
    const path = marked.map(({ x, y }) => `${left + x * scale} ${top + y * scale}`).join('L');
    return `M${path}${closed && marked.length === of.length ? 'Z' : ''}`;
  };
  const paths = [line(groups.length, false), line(groups.card, true)].filter((path) => path !== null);
  if (paths.length === 0) return null;
  const d = paths.join('');
  return (
    <svg className="marked-lines" aria-hidden="true">
      <path d={d} stroke="#101518" strokeWidth="4" fill="none" />
      <path d={d} stroke="#fff" strokeWidth="1.5" fill="none" />
    </svg>
  );
}
