import type { EndReading, SelvedgeRow } from '../model/check.ts';
import type { ClothFrame } from './clothFrame.ts';

/** Where an end runs inside the cloth: cloth x of an end at a height, mm. */
export type RibCourse = (end: number, y: number) => number;

/**
 * A first course for every end, from what is seen outside it: the selvedges move the outer ends, the fell says where
 * each end is on top, and in between both fade evenly towards the middle and the base.
 */
export function ribCourse(frame: ClothFrame, ends: readonly EndReading[], selvedge: readonly SelvedgeRow[]): RibCourse {
  const shift = (side: 'left' | 'right') => {
    const rows = selvedge.flatMap((row) => (row[side] ? [{ y: row.y, x: row[side].value }] : []));
    const low = rows.filter((row) => row.y <= 10).map((row) => row.x);
    const outer = frame.endX(side === 'left' ? 0 : frame.ends - 1);
    // Where the base's own edge wasn't seen, it is taken to lie as planned.
    const planned = outer + (side === 'left' ? -1 : 1) * (frame.endHalf + 2 * frame.planPass);
    const base = low.length > 0 ? low.reduce((a, b) => a + b, 0) / low.length : planned;
    return (y: number): number => {
      if (rows.length === 0) return 0;
      let k = 0;
      while (k < rows.length - 1 && rows[k + 1]!.y <= y) k++;
      const a = rows[k]!;
      const b = rows[Math.min(k + 1, rows.length - 1)]!;
      const share = b.y > a.y ? Math.max(0, Math.min(1, (y - a.y) / (b.y - a.y))) : 0;
      return a.x + share * (b.x - a.x) - base;
    };
  };
  const left = shift('left');
  const right = shift('right');
  const half = (frame.ends * frame.pitch) / 2;
  const outside = (end: number, y: number): number => {
    const u = frame.endX(end) / half;
    return left(y) * Math.max(0, -u) + right(y) * Math.max(0, u);
  };
  const atFell = ends.map((end) => {
    if (!end.fell || !end.xAtFell) return null;
    const y = end.fell.value;
    return { y, off: end.xAtFell.value - frame.endX(end.index) - outside(end.index, y) };
  });
  const byIndex = new Map(ends.map((end, i) => [end.index, atFell[i]!]));
  return (end, y) => {
    const top = byIndex.get(end);
    const rest = top && top.y > 1 ? top.off * Math.min(1, Math.max(0, y / top.y)) : 0;
    return frame.endX(end) + outside(end, y) + rest;
  };
}
