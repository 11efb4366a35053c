import type { Marking, Thing } from './marking.ts';

interface MarkedLinesProps {
  readonly marking: Marking;
  /** Screen px per photograph px, and where the photograph begins in the box. */
  readonly scale: number;
  readonly left: number;
  readonly top: number;
}

/** Lengths and the card as lines between their marks, light on dark so that they show on any photograph. */
export function MarkedLines({ marking, scale, left, top }: MarkedLinesProps) {
  const line = ({ kind, points }: Thing): string => {
    const marked = points.flatMap((point) => point ?? []);
    if (kind === 'corner' || marked.length < 2) return '';
    const path = marked.map(({ x, y }) => `${left + x * scale} ${top + y * scale}`).join('L');
    return `M${path}${kind === 'card' && marked.length === points.length ? 'Z' : ''}`;
  };
  const d = marking.map(line).join('');
  if (d === '') return null;
  return (
    <svg className="marked-lines" aria-hidden="true">
      <path d={d} stroke="#101518" strokeWidth="4" fill="none" />
      <path d={d} stroke="#fff" strokeWidth="1.5" fill="none" />
    </svg>
  );
}
