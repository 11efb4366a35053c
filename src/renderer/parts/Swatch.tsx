import './swatch.css';
import { letterColour } from '../../core/colour/contrast.ts';
import { Sign } from './Sign.tsx';

export { yarnLetter } from '../../core/report/yarnLetter.ts';

interface SwatchProps {
  readonly colour: string | null;
  readonly letter: string;
  readonly runsShort?: boolean;
  readonly size?: number;
}

/** A yarn: its colour and its letter, so that colour is never the only sign. */
export function Swatch({ colour, letter, runsShort = false, size = 26 }: SwatchProps) {
  const side = `${size / 16}rem`;
  const letterSize = `${Math.max(14, size * 0.54) / 16}rem`;
  const style =
    colour === null
      ? { width: side, height: side, fontSize: letterSize }
      : { width: side, height: side, fontSize: letterSize, background: colour, color: letterColour(colour) };
  return (
    <span className="swatch-place">
      <span className={colour === null ? 'swatch is-unknown' : 'swatch'} style={style}>
        {letter}
      </span>
      {runsShort && <Sign name="mend" size={18} />}
    </span>
  );
}
