import { flagFinding } from '../../../core/compare/flagFinding.ts';
import type { Flag, LoomReading } from '../../../core/model/check.ts';
import type { LengthUnits } from '../../../core/model/lengthWords.ts';
import type { PlannedSelvedges } from '../../../core/warp/plannedSelvedges.ts';
import { findingSaid } from '../../words/figures.ts';
import type { PlainPoint } from './plainPoint.ts';

const acrossKinds: readonly Flag['kind'][] = ['draw-in', 'spreading', 'motif'];

/** Whether a flag speaks of a place across the cloth, as an edge does, and not of a height. */
export const isAcross = (flag: Flag): boolean => acrossKinds.includes(flag.kind);

/** The figure of a flag in the weaver's language; null where its own words hold it. */
export function flagFigure(flag: Flag, units: LengthUnits) {
  const found = flagFinding(flag, units);
  return found === null ? null : findingSaid(found);
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
  if (!isAcross(flag)) return { x: edges[flag.side] * 0.6, y: flag.yMm };
  return selvedgeAt(reading, flag.side, flag.yMm) ?? { x: edges[flag.side], y: flag.yMm };
}
