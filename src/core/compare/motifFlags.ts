import { inBothUnits } from '../model/bothUnits.ts';
import type { Flag } from '../model/check.ts';
import { sizeAsFinding } from '../model/deviationWords.ts';
import { measurement } from '../model/measurement.ts';
import type { Piece } from '../model/piece.ts';
import type { MotifEdge } from './motifEdges.ts';

/** Only an edge seen over this many passes is flagged: a tail of another yarn may hide fewer, and look like one. */
const LONG_ENOUGH = 20;

/** The motif edge that lies farthest from its place across the cloth, where it lies too far. */
export function motifFlags(edges: readonly MotifEdge[], piece: Piece): Flag[] {
  let worst: MotifEdge | null = null;
  for (const edge of edges) {
    const size = Math.abs(edge.offMm);
    if (edge.way !== 'across' || edge.length < LONG_ENOUGH) continue;
    if (size <= piece.making.allowance || size <= 2 * edge.sigmaMm) continue;
    if (!worst || size * Math.sqrt(edge.length) > Math.abs(worst.offMm) * Math.sqrt(worst.length)) worst = edge;
  }
  if (!worst) return [];
  const ends = Math.abs(Math.round(worst.off));
  const way = worst.off > 0 ? 'right' : 'left';
  const off = measurement(worst.offMm, worst.sigmaMm, 1, 'motif');
  return [
    {
      kind: 'motif',
      side: worst.side,
      yMm: worst.pass * piece.cloth.passHeight,
      xMm: null,
      ends: [],
      // Out is away from the middle, as for the cloth's own edges.
      deviationMm: worst.side === 'left' ? -worst.offMm : worst.offMm,
      sigmaMm: worst.sigmaMm,
      message: inBothUnits((units) => {
        const size = sizeAsFinding(off, units);
        return `An edge in the cloth lies ${size.figure} to the ${way} of its place, ${size.giveOrTake}.`;
      }),
      advice:
        ends === 1
          ? `Take the next turns there 1 end to the ${way === 'right' ? 'left' : 'right'}.`
          : `Take the next turns there ${ends} ends to the ${way === 'right' ? 'left' : 'right'}.`,
    },
  ];
}
