import { memo, useEffect, useRef } from 'react';
import type { Piece } from '../../../core/model/piece.ts';
import { Swatch, yarnLetter } from '../../parts/Swatch.tsx';
import { useWords } from '../../words/useWords.ts';
import { useCartoon } from './cartoonStore.ts';

interface ShapeListProps {
  readonly piece: Piece;
}

/** Shapes in weaving layers, the topmost first, and the ground under them all; then what is fastened on afterwards. */
export const ShapeList = memo(
  function ShapeList({ piece }: ShapeListProps) {
    const words = useWords().cartoon;
    const { chosen, choose, ornament, chooseOrnament } = useCartoon();
    const yarnOf = (id: string) => {
      const index = Math.max(
        0,
        piece.yarns.findIndex((yarn) => yarn.id === id),
      );
      return { letter: yarnLetter(index), colour: piece.yarns[index]?.colour ?? null };
    };
    const list = useRef<HTMLDivElement>(null);
    // biome-ignore lint/correctness/useExhaustiveDependencies: what is newly chosen is brought into sight.
    useEffect(() => {
      list.current?.querySelector('.is-chosen')?.scrollIntoView({ block: 'nearest' });
    }, [chosen, ornament]);
    return (
      <div className="shape-list" ref={list}>
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
                <span className="shape-row-name">{shape.name}</span>
                {(shape.hidden || shape.locked) && (
                  <span className="second">{shape.hidden ? words.hidden : words.locked}</span>
                )}
              </button>
            </li>
          ))}
          <li>
            <button
              type="button"
              className={chosen === null && ornament === null ? 'shape-row is-chosen' : 'shape-row'}
              aria-pressed={chosen === null && ornament === null}
              onClick={() => choose(null)}
            >
              <Swatch {...yarnOf(piece.cloth.ground)} />
              <span className="shape-row-name">{words.ground}</span>
            </button>
          </li>
          {piece.ornaments.map((each) => (
            <li key={each.id}>
              <button
                type="button"
                aria-pressed={each.id === ornament}
                className={each.id === ornament ? 'shape-row is-chosen' : 'shape-row'}
                onClick={() => chooseOrnament(each.id)}
              >
                <Swatch
                  {...(each.kind === 'wrapped-flower' ? yarnOf(each.yarn) : { letter: '', colour: each.colour })}
                />
                <span className="shape-row-name">{each.name}</span>
                <span className="second">{words.applied}</span>
              </button>
            </li>
          ))}
        </ul>
      </div>
    );
  },
  // A drag changes a shape's form only: the list stands still.
  (one, other) =>
    one.piece.yarns === other.piece.yarns &&
    one.piece.cloth.ground === other.piece.cloth.ground &&
    one.piece.shapes.length === other.piece.shapes.length &&
    one.piece.shapes.every((shape, index) => {
      const now = other.piece.shapes[index]!;
      return (
        shape === now ||
        (shape.id === now.id &&
          shape.name === now.name &&
          shape.yarn === now.yarn &&
          shape.hidden === now.hidden &&
          shape.locked === now.locked)
      );
    }) &&
    (one.piece.ornaments === other.piece.ornaments ||
      (one.piece.ornaments.length === other.piece.ornaments.length &&
        one.piece.ornaments.every((each, index) => {
          const now = other.piece.ornaments[index]!;
          return each.id === now.id && each.name === now.name && each.kind === now.kind;
        }))),
);
