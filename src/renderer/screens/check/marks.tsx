/**
 * Marks on a photograph. Each is legible on any yarn, in greyscale and without telling red from green: plan and cloth
 * differ by dash, casing and lightness before hue. Sizes at 1×, multiplied by `size`.
 */
interface LineProps {
  readonly d: string;
  readonly size: number;
}

export function PlanLine({ d, size }: LineProps) {
  return (
    <g fill="none" strokeLinejoin="round">
      <path d={d} stroke="var(--photo-plan-outer)" strokeWidth={5.6 * size} />
      <path d={d} stroke="#ffffff" strokeWidth={4 * size} />
      <path d={d} stroke="var(--photo-plan)" strokeWidth={2.4 * size} strokeDasharray={`${9 * size} ${5 * size}`} />
    </g>
  );
}

export function ClothLine({ d, size }: LineProps) {
  return (
    <g fill="none" strokeLinejoin="round">
      <path d={d} stroke="var(--photo-cloth-outer)" strokeWidth={7 * size} />
      <path d={d} stroke="var(--photo-cloth-casing)" strokeWidth={5.4 * size} />
      <path d={d} stroke="var(--photo-cloth)" strokeWidth={2.6 * size} />
    </g>
  );
}

/** Hatches for short of plan and past plan; put once inside each drawing that uses them, under its own name. */
export function DifferencePatterns({ name, size }: { readonly name: string; readonly size: number }) {
  return (
    <defs>
      <pattern
        id={`${name}-short`}
        width="7"
        height="7"
        patternUnits="userSpaceOnUse"
        patternTransform={`rotate(45) scale(${size})`}
      >
        <path d="M3.5 0V7" stroke="var(--photo-short)" strokeWidth="3.6" />
        <path d="M3.5 0V7" stroke="var(--photo-cloth)" strokeWidth="1.8" />
      </pattern>
      <pattern
        id={`${name}-past`}
        width="7"
        height="7"
        patternUnits="userSpaceOnUse"
        patternTransform={`scale(${size})`}
      >
        <circle cx="3.5" cy="3.5" r="2.5" fill="var(--photo-short)" />
        <circle cx="3.5" cy="3.5" r="1.3" fill="var(--photo-cloth)" />
      </pattern>
    </defs>
  );
}

export function Difference({
  d,
  name,
  side,
}: {
  readonly d: string;
  readonly name: string;
  readonly side: 'short' | 'past';
}) {
  return (
    <g>
      <path d={d} fill="var(--photo-ground)" />
      <path d={d} fill={`url(#${name}-${side})`} />
    </g>
  );
}

/** A measured distance with end ticks, level or upright. */
export function MeasurementMark(props: {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly size: number;
}) {
  const { x1, y1, x2, y2, size } = props;
  const length = Math.hypot(x2 - x1, y2 - y1) || 1;
  const nx = (-(y2 - y1) / length) * 7 * size;
  const ny = ((x2 - x1) / length) * 7 * size;
  const d = `M${x1 - nx} ${y1 - ny}L${x1 + nx} ${y1 + ny}M${x1} ${y1}L${x2} ${y2}M${x2 - nx} ${y2 - ny}L${x2 + nx} ${y2 + ny}`;
  return (
    <g fill="none">
      <path d={d} stroke="#ffffff" strokeWidth={5 * size} strokeLinecap="square" />
      <path d={d} stroke="var(--photo-mark)" strokeWidth={2 * size} />
    </g>
  );
}
