import type { Flag } from '../model/check.ts';
import { type DeviationAxis, deviationAsFinding } from '../model/deviationWords.ts';
import type { LengthUnits } from '../model/lengthWords.ts';
import { measurement } from '../model/measurement.ts';

const acrossKinds: readonly Flag['kind'][] = ['draw-in', 'spreading', 'motif'];

export const flagAxis = (flag: Flag): DeviationAxis => (acrossKinds.includes(flag.kind) ? 'across' : 'along');

/** The figure of a flag with its give or take; null for a count, and for strings, whose own words hold it. */
export function flagFinding(flag: Flag, units: LengthUnits): ReturnType<typeof deviationAsFinding> | null {
  if (flag.kind === 'count' || flag.kind === 'slack') return null;
  return deviationAsFinding(
    measurement(flag.deviationMm, Math.max(flag.sigmaMm, 1e-3), 1, 'flag'),
    flagAxis(flag),
    units,
  );
}
