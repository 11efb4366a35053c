import type { Piece } from '../../../core/model/piece.ts';
import type { Plan } from '../../../core/plan/planPiece.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { lengthSaid, typedFigure, yarnLengthSaid } from '../../words/figures.ts';
import { useWords } from '../../words/useWords.ts';

interface WarpTableProps {
  readonly piece: Piece;
  readonly plan: Plan;
  readonly onLoom: () => void;
  readonly onWarp: () => void;
  readonly onMaking: () => void;
  readonly onArithmetic: () => void;
}

/** The warp in words: loom, ends and notches, odd or even, how much to cut. */
export function WarpTable({ piece, plan, onLoom, onWarp, onMaking, onArithmetic }: WarpTableProps) {
  const words = useWords().piece;
  const { loom, warp } = piece;
  const say = (value: number) => lengthSaid(value, piece.units);
  const pitch = piece.units === 'in' ? lengthSaid(loom.notchPitch, 'in') : `${typedFigure(loom.notchPitch)} mm`;
  const middle = Math.floor((warp.ends - 1) / 2) + 1;
  const cut = words.cutIs(
    yarnLengthSaid(plan.materials.warp.length, piece.units),
    warp.yarnName,
    lengthSaid(warp.stringDiameter, piece.units, 'edge'),
  );
  return (
    <section className="piece-part">
      <div className="piece-part-head">
        <h2>{words.warp}</h2>
        <span className="piece-part-more">
          <QuietButton onPress={onMaking}>{words.making}</QuietButton>
          <QuietButton onPress={onArithmetic}>{words.arithmetic}</QuietButton>
        </span>
      </div>
      <dl className="warp-table">
        <dt>{words.loom}</dt>
        <dd>
          {words.loomIs(loom.name, pitch, say(loom.openingWidth).replace(/\u00a0mm$/, ''), say(loom.openingHeight))}{' '}
          <QuietButton onPress={onLoom} label={words.changeLoom}>
            {words.change}
          </QuietButton>
        </dd>
        <dt>{words.ends(warp.ends)}</dt>
        <dd>
          {words.endsAre(warp.stringsPerEnd, warp.firstNotch + 1, warp.firstNotch + warp.ends)}{' '}
          <QuietButton onPress={onWarp} label={words.changeWarp}>
            {words.change}
          </QuietButton>
        </dd>
        <dt>{words.parity(warp.ends)}</dt>
        <dd>{warp.ends % 2 === 1 ? words.point(middle) : words.blunt(middle, middle + 1)}</dd>
        <dt>{words.cut}</dt>
        <dd>
          <strong>{cut.length}</strong> {cut.rest}
        </dd>
      </dl>
    </section>
  );
}
