import type { Flag } from '../model/check.ts';
import { giveOrTake } from '../model/deviationWords.ts';
import type { LengthUnits } from '../model/lengthWords.ts';
import { lengthInWords } from '../model/lengthWords.ts';
import type { Piece } from '../model/piece.ts';
import type { MotifEdge } from './motifEdges.ts';

/** Only an edge seen over this many passes is flagged: a tail of another yarn may hide fewer, and look like one. */
const LONG_ENOUGH = 20;

/** The motif edge that lies farthest from its place across the cloth, where it lies too far. */
export function motifFlags(edges: readonly MotifEdge[], piece: Piece, units: LengthUnits): Flag[] {
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
  const size = lengthInWords(Number(Math.abs(worst.offMm).toFixed(1)), units);
  return [
    {
      kind: 'motif',
      side: worst.side,
      yMm: worst.pass * piece.cloth.passHeight,
      xMm: null,
      // Out is away from the middle, as for the cloth's own edges.
      deviationMm: worst.side === 'left' ? -worst.offMm : worst.offMm,
      sigmaMm: worst.sigmaMm,
      message: `An edge in the cloth lies ${size} to the ${way} of its place, give or take ${giveOrTake(worst.sigmaMm).text}.`,
      advice:
        ends === 1
          ? `Take the next turns there 1 end to the ${way === 'right' ? 'left' : 'right'}.`
          : `Take the next turns there ${ends} ends to the ${way === 'right' ? 'left' : 'right'}.`,
    },
  ];
}
