import type { PlainPoint } from './plainPoint.ts';

interface MagnifierGlassProps {
  readonly address: string | null;
  /** The mark under the finger or the keys; null where there is none. */
  readonly point: PlainPoint | null;
  /** Screen px per photograph px, where the photograph begins in its box, and how wide the box is. */
  readonly scale: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
}

const GLASS = 168;
const TIMES = 9;

/** Nine times the screen's size, above the finger, with a cross hair on the very spot. */
export function MagnifierGlass({ address, point, scale, left, top, width }: MagnifierGlassProps) {
  if (point === null || address === null) return null;
  const x = left + point.x * scale;
  const y = top + point.y * scale;
  // Above the finger; where there is no room above, below it.
  const glassTop = y - GLASS - 36 < 0 ? y + 36 : y - GLASS - 36;
  const glassLeft = Math.min(Math.max(x - GLASS / 2, 4), Math.max(4, width - GLASS - 4));
  const times = TIMES * scale;
  return (
    <svg
      className="magnifier"
      width={GLASS}
      height={GLASS}
      style={{ left: glassLeft, top: glassTop }}
      aria-hidden="true"
    >
      <g transform={`translate(${GLASS / 2 - point.x * times} ${GLASS / 2 - point.y * times}) scale(${times})`}>
        <image href={address} x="0" y="0" />
      </g>
      <path
        d={`M${GLASS / 2} 0V${GLASS / 2 - 8}M${GLASS / 2} ${GLASS / 2 + 8}V${GLASS}M0 ${GLASS / 2}H${GLASS / 2 - 8}M${GLASS / 2 + 8} ${GLASS / 2}H${GLASS}`}
        stroke="#fff"
        strokeWidth="5"
      />
      <path
        d={`M${GLASS / 2} 0V${GLASS / 2 - 8}M${GLASS / 2} ${GLASS / 2 + 8}V${GLASS}M0 ${GLASS / 2}H${GLASS / 2 - 8}M${GLASS / 2 + 8} ${GLASS / 2}H${GLASS}`}
        stroke="#101518"
        strokeWidth="2"
      />
    </svg>
  );
}
