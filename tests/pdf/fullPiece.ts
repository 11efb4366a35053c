import type { Piece } from '../../src/core/model/piece.ts';
import { clothMm, mm, radians } from '../../src/core/model/units.ts';
import { harbourLantern } from './samplePiece.ts';

/** The sample with everything that is spoken of only where it is there: ornaments, inches, every kind of border. */
export function fullPiece(): Piece {
  const piece = harbourLantern();
  const borders = ['slit', 'shared-end', 'interlocked', 'dovetailed'] as const;
  const at = { x: clothMm(0), y: clothMm(100) };
  return {
    ...piece,
    units: 'in',
    making: { ...piece.making, slitLimit: mm(5), hillLimit: mm(20), fringe: mm(100) },
    shapes: piece.shapes.map((shape, index) => ({ ...shape, boundary: borders[index % 4]!, singlePass: true })),
    ornaments: [
      {
        id: 'o1',
        kind: 'wrapped-flower',
        name: 'Blüte',
        at,
        yarn: piece.yarns[0]!.id,
        pegs: 8,
        formerDiameter: mm(40),
        wrapsPerPetal: 3,
        layers: 2,
        count: 3,
      },
      {
        id: 'o2',
        kind: 'felted-leaf',
        name: 'Blatt',
        at,
        colour: '#335533',
        length: mm(40),
        width: mm(15),
        thickness: mm(3),
        rotation: radians(0),
        count: 4,
      },
    ],
  };
}
