import type { Piece } from '../../../core/model/piece.ts';
import { Swatch, yarnLetter } from '../../parts/Swatch.tsx';
import { useWords } from '../../words/useWords.ts';
import { useCartoon } from './cartoonStore.ts';

/** Shapes in weaving layers, the topmost first, and the ground under them all. */
export function ShapeList({ piece }: { readonly piece: Piece }) {
  const words = useWords().cartoon;
  const { chosen, choose } = useCartoon();
  const yarnOf = (id: string) => {
    const index = Math.max(
      0,
      piece.yarns.findIndex((yarn) => yarn.id === id),
    );
    return { letter: yarnLetter(index), colour: piece.yarns[index]?.colour ?? null };
  };
  return (
    <div className="shape-list">
      <h2>{words.shapesTopFirst}</h2>
      <ul>
        {piece.shapes.map((shape) => (
          <li key={shape.id}>
            <button
              type="button"
              aria-pressed={shape.id === chosen}
              className={
                shape.id === chosen ? 'shape-row is-chosen' : shape.hidden ? 'shape-row is-hidden' : 'shape-row'
              }
              onClick={() => choose(shape.id)}
            >
              <Swatch {...yarnOf(shape.yarn)} />
              <span>{shape.name}</span>
              {(shape.hidden || shape.locked) && (
                <span className="second">{shape.hidden ? words.hidden : words.locked}</span>
              )}
            </button>
          </li>
        ))}
        <li>
          <button type="button" className="shape-row" aria-pressed={chosen === null} onClick={() => choose(null)}>
            <Swatch {...yarnOf(piece.cloth.ground)} />
            <span>{words.ground}</span>
          </button>
        </li>
      </ul>
    </div>
  );
}
