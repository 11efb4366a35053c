import type { Flag } from '../model/check.ts';
import { deviationAsFinding, type Finding, sizeAsFinding } from '../model/deviationWords.ts';
import type { LengthUnits } from '../model/lengthWords.ts';
import { measurement } from '../model/measurement.ts';

/**
 * The figure of a flag with its give or take: with a side where the side is the finding, without where the flag's own
 * words say which way it goes. Null for a count, and for strings, whose words hold the figure.
 */
export function flagFinding(flag: Flag, units: LengthUnits): Finding | null {
  const deviation = measurement(flag.deviationMm, Math.max(flag.sigmaMm, 1e-3), 1, 'flag');
  switch (flag.kind) {
    case 'count':
    case 'slack':
      return null;
    case 'draw-in':
      return deviationAsFinding(deviation, 'across', units);
    case 'spreading':
      return deviationAsFinding(deviation, flag.side === null ? 'breadth' : 'across', units);
    case 'beat':
      return deviationAsFinding(deviation, 'along', units);
    case 'tilt':
    case 'uneven':
    case 'motif':
      return sizeAsFinding(deviation, units);
  }
}
