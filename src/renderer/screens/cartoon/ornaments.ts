import { freeName } from '../../../core/cartoon/newShape.ts';
import { clothBox } from '../../../core/cartoon/snap.ts';
import type { Ornament, Piece } from '../../../core/model/piece.ts';
import { clothMm, mm, radians } from '../../../core/model/units.ts';
import { usePiece } from '../../state/pieceStore.ts';
import { useCartoon } from './cartoonStore.ts';
import { yarnForNew } from './freeShape.ts';

/** A new applied piece on the middle of the cloth. Sizes to start from are common practice, no source. */
export function newOrnament(piece: Piece, kind: Ornament['kind'], name: string): Ornament {
  const taken = new Set(piece.ornaments.map((ornament) => ornament.id));
  let number = piece.ornaments.length;
  while (taken.has(`o${number}`)) number++;
  const cloth = clothBox(piece);
  const shared = {
    id: `o${number}`,
    name: freeName(
      name,
      piece.ornaments.map((ornament) => ornament.name),
    ),
    at: { x: clothMm(0), y: clothMm(Math.round(cloth.top / 2)) },
    count: 1,
  };
  if (kind === 'wrapped-flower') {
    return {
      ...shared,
      kind,
      yarn: yarnForNew(piece),
      pegs: 8,
      formerDiameter: mm(50),
      wrapsPerPetal: 2,
      layers: 1,
    };
  }
  return { ...shared, kind, colour: '#5f7a4a', length: mm(50), width: mm(22), thickness: mm(4), rotation: radians(0) };
}

export function addOrnament(piece: Piece, kind: Ornament['kind'], name: string): void {
  const ornament = newOrnament(piece, kind, name);
  usePiece.getState().change((now) => ({ ...now, ornaments: [...now.ornaments, ornament] }));
  useCartoon.getState().setTool('select');
  useCartoon.getState().chooseOrnament(ornament.id);
}

/** Takes an applied piece off; undo brings it back. */
export function removeOrnament(id: string): void {
  usePiece.getState().change((now) => ({ ...now, ornaments: now.ornaments.filter((ornament) => ornament.id !== id) }));
  useCartoon.getState().chooseOrnament(null);
}
