import type { LoomReading } from '../model/check.ts';
import type { Piece } from '../model/piece.ts';
import { median } from '../photo/statistics.ts';
import { plannedSelvedges } from '../warp/plannedSelvedges.ts';

export type Side = 'left' | 'right';

/** One selvedge against plan: how far out (positive) it lies at each height, the base's own error taken out. */
export interface EdgeCourse {
  readonly side: Side;
  /** How far out the cloth's lowest 10 mm lie on this side, mm: the base's own error, told apart. */
  readonly baseMm: number;
  readonly points: readonly { readonly y: number; readonly out: number; readonly sigma: number }[];
}

/** Up to here the cloth shows how it was begun, mm. */
const BASE_HEIGHT = 10;
/** Readings either side that smooth one: a single odd row is no finding. */
const NEIGHBOURS = 2;

export function edgeCourse(reading: LoomReading, piece: Piece, side: Side): EdgeCourse {
  const planned = plannedSelvedges(piece, reading.selvedge);
  const sign = side === 'left' ? -1 : 1;
  const raw = reading.selvedge
    .flatMap((row) => {
      const x = row[side];
      return x ? [{ y: row.y, out: sign * (x.value - planned[side]), sigma: x.sigma }] : [];
    })
    .sort((a, b) => a.y - b.y);
  const low = raw.filter((point) => point.y <= BASE_HEIGHT);
  const baseMm = low.length > 0 ? median(low.map((point) => point.out)) : 0;
  const baseSigma = low.length > 0 ? median(low.map((point) => point.sigma)) / Math.sqrt(Math.min(3, low.length)) : 0;
  const points = raw.map((point, i) => {
    const near = raw.slice(Math.max(0, i - NEIGHBOURS), i + NEIGHBOURS + 1);
    return {
      y: point.y,
      out: median(near.map((other) => other.out)) - baseMm,
      sigma: Math.hypot(median(near.map((other) => other.sigma)), baseSigma),
    };
  });
  return { side, baseMm, points };
}
