import type { Flag, LoomReading } from '../../../core/model/check.ts';
import type { DeviationAxis } from '../../../core/model/deviationWords.ts';
import type { LengthUnits } from '../../../core/model/lengthWords.ts';
import type { PlannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import { finding } from '../../words/figures.ts';
import type { PlainPoint } from './plainPoint.ts';

const acrossKinds: readonly Flag['kind'][] = ['draw-in', 'spreading', 'motif'];

export const flagAxis = (flag: Flag): DeviationAxis => (acrossKinds.includes(flag.kind) ? 'across' : 'along');

/** The figure of a flag with its give or take; null for a count, and for strings, whose own words hold it. */
export function flagFigure(flag: Flag, units: LengthUnits) {
  if (flag.kind === 'count' || flag.kind === 'slack') return null;
  const deviation = { value: flag.deviationMm, sigma: Math.max(flag.sigmaMm, 1e-3), n: 1, source: 'flag' };
  return finding(deviation, flagAxis(flag), units);
}

/** The measured value nearest to a height on one side. */
export function selvedgeAt(reading: LoomReading, side: 'left' | 'right', y: number): PlainPoint | null {
  let best: PlainPoint | null = null;
  for (const row of reading.selvedge) {
    const at = row[side];
    if (at !== null && (best === null || Math.abs(row.y - y) < Math.abs(best.y - y))) best = { x: at.value, y: row.y };
  }
  return best;
}

/** Where on the cloth a flag speaks of; null when it speaks of the whole. */
export function flagPlace(flag: Flag, reading: LoomReading, edges: PlannedSelvedges): PlainPoint | null {
  if (flag.yMm === null) return null;
  if (flag.xMm !== null) return { x: flag.xMm, y: flag.yMm };
  if (flag.side === null) return { x: 0, y: flag.yMm };
  if (flagAxis(flag) === 'along') return { x: edges[flag.side] * 0.6, y: flag.yMm };
  return selvedgeAt(reading, flag.side, flag.yMm) ?? { x: edges[flag.side], y: flag.yMm };
}
