import './swatch.css';
import { Sign } from './Sign.tsx';

export { yarnLetter } from '../../core/report/yarnLetter.ts';

/** Dark or light letter, whichever the eye finds more easily on this colour (WCAG relative luminance). */
export function letterColour(colour: string): string {
  const channel = (from: number) => {
    const share = Number.parseInt(colour.slice(from, from + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  const luminance = 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
  return luminance > 0.179 ? '#171d20' : '#ffffff';
}

interface SwatchProps {
  readonly colour: string | null;
  readonly letter: string;
  readonly runsShort?: boolean;
  readonly size?: number;
}

/** A yarn: its colour and its letter, so that colour is never the only sign. */
export function Swatch({ colour, letter, runsShort = false, size = 26 }: SwatchProps) {
  const side = `${size / 16}rem`;
  const style =
    colour === null
      ? { width: side, height: side }
      : { width: side, height: side, background: colour, color: letterColour(colour) };
  return (
    <span className="swatch-place">
      <span className={colour === null ? 'swatch is-unknown' : 'swatch'} style={style}>
        {letter}
      </span>
      {runsShort && <Sign name="mend" size={18} />}
    </span>
  );
}
