import type { Piece } from '../../../core/model/piece.ts';
import { useWords } from '../../words/useWords.ts';
import { type Frame, RULER } from './frame.ts';

const stepOf = (pxEach: number, least: number, steps: readonly number[]) =>
  steps.find((step) => step * pxEach >= least) ?? steps.at(-1)!;

/** Height in mm at the left, turns at the right, ends along the foot. */
export function CartoonRulers({ piece, frame }: { readonly piece: Piece; readonly frame: Frame }) {
  const words = useWords().cartoon;
  const { pxPerMm } = frame.look;
  const turn = 2 * piece.cloth.passHeight;
  const inches = piece.units === 'in';
  const unit = inches ? 25.4 : 1;
  const heights = ticks(
    piece.cloth.height / unit,
    stepOf(pxPerMm * unit, 48, inches ? [0.5, 1, 2, 4] : [5, 10, 20, 50, 100, 200]),
  );
  const turns = ticks(piece.cloth.height / turn, stepOf(pxPerMm * turn, 48, [1, 2, 5, 10, 20, 50, 100, 200]));
  const pitch = piece.loom.notchPitch;
  const endStep = stepOf(pxPerMm * pitch, 40, [1, 5, 10, 20, 50, 100]);
  const ends = [1, ...ticks(piece.warp.ends - 1, endStep).slice(1), piece.warp.ends].filter(
    (end, index, all) => all.indexOf(end) === index,
  );
  const bottom = frame.height - RULER.bottom;
  const seenUp = (y: number) => y >= RULER.top - 1 && y <= bottom + 1;
  const right = frame.width - RULER.right;
  const middle = (piece.warp.ends + 1) / 2;
  return (
    <g className="cartoon-rulers">
      {heights.map((height) => {
        const y = frame.y(height * unit);
        return (
          seenUp(y) && (
            <g key={`h${height}`}>
              <path d={`M${RULER.left - 10} ${y}h8`} />
              <text x={RULER.left - 16} y={y} className="is-end">
                {height}
              </text>
            </g>
          )
        );
      })}
      {turns.map((count) => {
        const y = frame.y(count * turn);
        return (
          seenUp(y) && (
            <g key={`t${count}`}>
              <path d={`M${right + 2} ${y}h8`} />
              <text x={right + 14} y={y}>
                {count}
              </text>
            </g>
          )
        );
      })}
      {ends.map((end) => {
        const x = frame.x((end - middle) * pitch);
        const room = end === piece.warp.ends || end === 1 || frame.x((piece.warp.ends - middle) * pitch) - x > 26;
        return (
          x >= RULER.left - 1 &&
          x <= right + 1 &&
          room && (
            <g key={`e${end}`}>
              <path d={`M${x} ${bottom + 2}v8`} />
              <text x={x} y={bottom + 24} className={end === middle ? 'is-middle is-bold' : 'is-middle'}>
                {end}
              </text>
            </g>
          )
        );
      })}
      <text x={RULER.left - 16} y={bottom + 24} className="is-end is-word">
        {words.end}
      </text>
    </g>
  );
}

const ticks = (most: number, step: number): number[] =>
  Array.from({ length: Math.floor(most / step + 1e-9) + 1 }, (_, index) => index * step);
