import { memo, type PointerEvent } from 'react';
import type { Piece } from '../../../core/model/piece.ts';
import { ornamentPlans } from '../../../core/ornaments/ornamentPlans.ts';
import { useCartoon } from './cartoonStore.ts';
import type { Frame } from './frame.ts';

interface OrnamentsDrawnProps {
  readonly piece: Piece;
  readonly frame: Frame;
  readonly hold: (ornament: string, event: PointerEvent) => void;
}

/** Applied pieces at true size where they will sit; dragged like a shape. */
export const OrnamentsDrawn = memo(
  function OrnamentsDrawn({ piece, frame, hold }: OrnamentsDrawnProps) {
    const chosen = useCartoon((state) => state.ornament);
    return ornamentPlans(piece).map((plan, index) => {
      const ornament = piece.ornaments[index]!;
      const colour =
        ornament.kind === 'felted-leaf'
          ? ornament.colour
          : piece.yarns.find((yarn) => yarn.id === ornament.yarn)?.colour;
      const path = `M${plan.outline.map(({ x, y }) => `${frame.x(x).toFixed(1)} ${frame.y(y).toFixed(1)}`).join('L')}Z`;
      return (
        <g
          key={plan.id}
          className={plan.id === chosen ? 'ornament is-chosen' : 'ornament'}
          onPointerDown={(event) => hold(plan.id, event)}
        >
          <path d={path} className="ornament-casing" />
          <path d={path} className="ornament-body" style={{ fill: colour }} />
        </g>
      );
    });
  },
  (one, other) =>
    one.piece.ornaments === other.piece.ornaments &&
    one.piece.yarns === other.piece.yarns &&
    one.piece.cloth === other.piece.cloth &&
    one.frame === other.frame,
);
