import { Bob } from '../../parts/Bob.tsx';

/** An empty notched frame with the plumb line hanging in it, drawn from the usual loom's own sizes. */
export function EmptyLoom({ label }: { readonly label: string }) {
  const notches = Array.from({ length: 51 }, (_, index) => 245.5 + (index - 25) * 8.09);
  const tick = (x: number, y: number) => <path key={`${x} ${y}`} d={`M${x} ${y}v7`} />;
  return (
    <svg className="empty-loom" viewBox="0 0 491 580" role="img" aria-label={label}>
      <g fill="var(--wood)" stroke="var(--wood-line)" strokeWidth="1.5">
        <path d="M2.5 36h34v509h-34ZM454.5 36h34v509h-34Z" />
        <path d="M.75 .75h489.5v35.5H.75ZM.75 543.75h489.5v35.5H.75Z" />
        <g strokeWidth="2">
          {notches.map((x) => tick(x, 29))}
          {notches.map((x) => tick(x, 543.75))}
        </g>
      </g>
      <g color="var(--plan)">
        <path d="M245.5 42V392" stroke="currentColor" strokeWidth="3" />
        <g transform="translate(245.5 390)">
          <Bob scale={2.45} />
        </g>
      </g>
    </svg>
  );
}
