import { edgeCourse } from '../../../core/compare/edgeCourse.ts';
import { mirroredHeights } from '../../../core/compare/mirrored.ts';
import type { CheckRecord, LoomReading } from '../../../core/model/check.ts';
import type { Measurement } from '../../../core/model/measurement.ts';
import type { Piece } from '../../../core/model/piece.ts';
import { edgeAtFell } from '../check/edgeRows.ts';

export const trendNames = ['left', 'right', 'pass', 'width', 'halves'] as const;
export type TrendName = (typeof trendNames)[number];

export interface TrendPoint {
  readonly check: string;
  /** Height of the fell at that check, mm. */
  readonly height: number;
  /** Seconds since 1970 at which it was taken. */
  readonly time: number;
  readonly measured: Measurement;
}

const middle = (values: readonly number[]): number => {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
};

/** The middle height of the fell, mm; null when no end's was seen. */
export function fellHeight(reading: LoomReading): number | null {
  const fells = reading.ends.flatMap((end) => (end.fell === null ? [] : [end.fell.value]));
  return fells.length === 0 ? null : middle(fells);
}

function figure(name: TrendName, reading: LoomReading, piece: Piece): Measurement | null {
  switch (name) {
    case 'left':
    case 'right':
      return edgeAtFell(edgeCourse(reading, piece, name));
    case 'pass':
      return reading.pass;
    case 'halves': {
      const { mean, pairs } = mirroredHeights(reading.ends, piece.warp.ends, piece.cloth.passHeight);
      if (mean === null) return null;
      // Said of the right half, so that it stands on the side it is drawn.
      return { value: -mean.differenceMm, sigma: mean.sigmaMm, n: pairs.length, source: 'mirrored ends' };
    }
    case 'width': {
      const left = edgeAtFell(edgeCourse(reading, piece, 'left'));
      const right = edgeAtFell(edgeCourse(reading, piece, 'right'));
      if (left === null || right === null) return null;
      return {
        value: left.value + right.value,
        sigma: Math.hypot(left.sigma, right.sigma),
        n: left.n + right.n,
        source: 'both edges',
      };
    }
  }
}

/** One figure through all measured checks, oldest first. Checks that do not show it leave no point. */
export function trendOf(name: TrendName, records: readonly CheckRecord[], piece: Piece): TrendPoint[] {
  return records.flatMap((record) => {
    const height = fellHeight(record.reading);
    const measured = figure(name, record.reading, piece);
    if (height === null || measured === null) return [];
    return [{ check: record.id, height, time: Date.parse(record.taken ?? record.kept) / 1000, measured }];
  });
}

/** What the plan says of a figure, and how far it may stray, in the figure's own unit. */
export function planOf(name: TrendName, piece: Piece): { readonly value: number; readonly allowance: number } {
  if (name === 'pass') return { value: piece.cloth.passHeight, allowance: piece.cloth.passHeight * 0.04 };
  return { value: 0, allowance: piece.making.allowance };
}
