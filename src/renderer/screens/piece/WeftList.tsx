import { gramsInWords } from '../../../core/model/lengthWords.ts';
import type { Piece } from '../../../core/model/piece.ts';
import type { Plan } from '../../../core/plan/planPiece.ts';
import { QuietButton } from '../../parts/Actions.tsx';
import { Swatch, yarnLetter } from '../../parts/Swatch.tsx';
import { yarnLengthSaid } from '../../words/figures.ts';
import { useWords } from '../../words/useWords.ts';

interface WeftListProps {
  readonly piece: Piece;
  readonly plan: Plan;
  readonly onYarn: (yarn: string) => void;
  readonly onAdd: () => void;
  readonly onFinishing: () => void;
}

/** A row a yarn: letter, name, metres and grams to buy; press one to say more about it. */
export function WeftList({ piece, plan, onYarn, onAdd, onFinishing }: WeftListProps) {
  const words = useWords().piece;
  const balls = piece.yarns
    .flatMap((_, index) => {
      const count = plan.materials.yarns[index]?.balls ?? null;
      return count === null || count === 0 ? [] : [words.balls(yarnLetter(index), count)];
    })
    .join(', ');
  return (
    <section className="piece-part">
      <div className="piece-part-head">
        <h2>{words.weft}</h2>
        <QuietButton onPress={onFinishing}>{words.finishing}</QuietButton>
      </div>
      <ul className="weft-list">
        {piece.yarns.map((yarn, index) => {
          const need = plan.materials.yarns[index];
          const used = need !== undefined && need.metres > 0;
          const header = yarn.id === piece.cloth.headerYarn && yarn.id !== piece.cloth.ground;
          const extra = !used ? words.unused : header ? words.headerAndTwining : null;
          return (
            <li key={yarn.id}>
              <button type="button" onClick={() => onYarn(yarn.id)}>
                <Swatch colour={yarn.colour} letter={yarnLetter(index)} />
                <span>{extra === null ? yarn.name : words.with(yarn.name, extra)}</span>
                <span className="weft-figure">{used ? yarnLengthSaid(need.metres, piece.units) : ''}</span>
                <span className="weft-figure">
                  {/* Without a label or a count the weight is a guess, and is said to be one. */}
                  {!used ? '' : need.density.guess ? words.about(gramsInWords(need.grams)) : gramsInWords(need.grams)}
                </span>
              </button>
            </li>
          );
        })}
      </ul>
      <p className="weft-foot">
        <span className="second">
          {words.withSpare(Math.round(piece.making.spare * 100))} {balls !== '' && `${balls}.`}
        </span>
        <QuietButton onPress={onAdd}>{words.addYarn}</QuietButton>
      </p>
    </section>
  );
}
