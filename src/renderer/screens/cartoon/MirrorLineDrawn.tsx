import { useMemo } from 'react';
import { mirrorImage } from '../../../core/cartoon/mirror.ts';
import { outlinesOf } from '../../../core/cartoon/outline.ts';
import { clothBox } from '../../../core/cartoon/snap.ts';
import type { Piece, Shape } from '../../../core/model/piece.ts';
import { useCartoon } from './cartoonStore.ts';
import type { Frame } from './frame.ts';
import { outlinePath } from './outlinePath.ts';

interface MirrorLineDrawnProps {
  readonly piece: Piece;
  readonly shape: Shape;
  readonly frame: Frame;
}

/** The slanting mirror line that is being set, and where the image of the chosen shape would lie. */
export function MirrorLineDrawn({ piece, shape, frame }: MirrorLineDrawnProps) {
  const line = useCartoon((state) => state.mirrorLine);
  const image = useMemo(() => {
    if (line === null) return [];
    const cloth = clothBox(piece);
    return outlinesOf(mirrorImage(shape, line, cloth), cloth).flatMap((outline) => outline.rings);
  }, [line, piece, shape]);
  if (line === null) return null;
  // Long enough to leave the window whichever way it slants.
  const reach = (frame.width + frame.height) / frame.look.pxPerMm;
  const [dx, dy] = [reach * Math.cos(line.angle), reach * Math.sin(line.angle)];
  const ends = {
    x1: frame.x(line.x - dx),
    y1: frame.y(line.y - dy),
    x2: frame.x(line.x + dx),
    y2: frame.y(line.y + dy),
  };
  const path = outlinePath(image, frame);
  return (
    <g>
      <line {...ends} className="drawn-casing" />
      <line {...ends} className="mirror-line" />
      <path d={path} className="drawn-casing" />
      <path d={path} className="drawn" />
    </g>
  );
}
