import type { Piece } from '../../../core/model/piece.ts';
import { endGap } from '../../../core/warp/endWidth.ts';
import { lengthSaid, numberSaid } from '../../words/figures.ts';
import { useWords } from '../../words/useWords.ts';

interface CrossSectionProps {
  readonly piece: Piece;
  /** Thickness of the ground weft, mm; null when nothing says. */
  readonly weft: number | null;
  readonly colour: string;
}

const WIDTH = 520;
const HEIGHT = 118;

/** The strings cut across, with two passes of weft going over and under them: what the gap is for. */
export function CrossSection({ piece, weft, colour }: CrossSectionProps) {
  const words = useWords().piece;
  const { loom, warp } = piece;
  const thick = weft ?? endGap(loom, warp);
  // As large as shows the weft's whole swing, and at least four ends.
  const scale = Math.min(
    WIDTH / (4.2 * loom.notchPitch),
    (HEIGHT - 16) / (warp.stringDiameter + 2 * Math.max(0.3, thick)),
    14,
  );
  const pitch = loom.notchPitch * scale;
  const middle = HEIGHT / 2;
  const ends = Math.ceil(WIDTH / pitch) + 2;
  const swing = ((warp.stringDiameter + thick) / 2) * scale;
  const offset = warp.stringsPerEnd === 2 ? (warp.stringDiameter / 2) * scale : 0;
  const pass = (phase: number) => {
    const points = [];
    for (let x = -pitch; x <= WIDTH + pitch; x += 3) {
      const along = ((x - pitch / 2) / pitch + phase) * Math.PI;
      // A flattened wave: the weft lies along the strings and bends between them.
      const wave = Math.cos(along);
      points.push(`${x.toFixed(1)} ${(middle - swing * Math.sign(wave) * Math.abs(wave) ** 0.75).toFixed(1)}`);
    }
    return `M${points.join('L')}`;
  };
  const times = numberSaid(Math.round(((scale * 25.4) / 96) * 10) / 10, 0);
  const gap = endGap(loom, warp);
  return (
    <figure className="cross-section">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={words.section}>
        <title>{words.section}</title>
        <rect width={WIDTH} height={HEIGHT} className="section-ground" />
        {[0, 1].map((phase) => (
          // What nobody has told the thickness of is only hinted at.
          <g key={phase} opacity={weft === null ? 0.3 : 1}>
            <path d={pass(phase)} fill="none" stroke="var(--ink)" strokeWidth={thick * scale + 2.5} />
            <path d={pass(phase)} fill="none" stroke={colour} strokeWidth={thick * scale} />
          </g>
        ))}
        {Array.from({ length: ends }, (_, index) => (index + 0.5) * pitch - pitch).map((x) =>
          (offset > 0 ? [-offset, offset] : [0]).map((side) => (
            <circle
              key={`${x} ${side}`}
              cx={x + side}
              cy={middle}
              r={(warp.stringDiameter / 2) * scale}
              className="section-string"
              style={{ fill: warp.colour }}
            />
          )),
        )}
      </svg>
      <figcaption className="second">
        <span>{words.seenFromAbove(times)}</span>
        <svg width={Math.max(12, gap * scale)} height="18" aria-hidden="true" className="gap-mark">
          <path
            d={`M1 3V15M1 9H${Math.max(11, gap * scale - 1)}M${Math.max(11, gap * scale - 1)} 3V15`}
            stroke="currentColor"
            strokeWidth="2"
          />
        </svg>
        <span className="gap-words">{words.gap(lengthSaid(Math.max(0, gap), piece.units, 'edge'))}</span>
      </figcaption>
    </figure>
  );
}
