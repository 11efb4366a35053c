import type { SelvedgeRow } from '../model/check.ts';
import type { Beat } from './beat.ts';
import { FLOATS_SEEN, floatSwing } from './floatSwing.ts';
import { median } from './statistics.ts';
import type { WeaveLine } from './weaveLines.ts';

/** So far inside an edge its turns are looked for, in pitches: on the outer half of the outermost end's floats. */
export const INSIDE = [0.2, 0.3, 0.4] as const;
/** Turns seen with less of what the cloth's own floats show aren't turns. */
const LEAST = 0.38;
/** An edge lies beyond its cloth over a height: readings within this of each other are judged together, mm. */
const TOGETHER = 12;

/** Where a selvedge was read, as a course to look along: cloth x at a height, mm; null where there are too few rows. */
export function alongEdge(rows: readonly SelvedgeRow[], side: 'left' | 'right'): ((y: number) => number) | null {
  const read = rows.flatMap((row) => (row[side] ? [{ y: row.y, x: row[side].value }] : []));
  if (read.length < 2) return null;
  return (y) => {
    let k = 0;
    while (k < read.length - 2 && read[k + 1]!.y <= y) k++;
    const [a, b] = [read[k]!, read[k + 1]!];
    const share = Math.max(0, Math.min(1, (y - a.y) / (b.y - a.y)));
    return a.x + share * (b.x - a.x);
  };
}

/**
 * Takes back the readings of one selvedge just inside which no turns are seen: what was read there is the edge of a
 * stripe, a shadow or hairs beyond the cloth.
 * @param inside along the edge, `INSIDE` of it, to above its topmost reading.
 * @param usual how much the cloth's floats swing, from `usualSwing`.
 */
export function withoutBeyond(
  rows: readonly SelvedgeRow[],
  side: 'left' | 'right',
  inside: readonly WeaveLine[],
  beat: Beat,
  usual: number,
): SelvedgeRow[] {
  const pass = beat.pass.value;
  const seen = rows.flatMap((row) => {
    if (!row[side]) return [];
    const to = Math.max(FLOATS_SEEN, row.y / pass + FLOATS_SEEN / 2) * pass;
    const sizes = inside.flatMap((line) => floatSwing(line, to, beat)?.size ?? []);
    return sizes.length > 0 ? [{ y: row.y, size: Math.max(...sizes) }] : [];
  });
  return rows.map((row) => {
    const near = seen.filter(({ y }) => Math.abs(y - row.y) <= TOGETHER).map(({ size }) => size);
    return near.length > 0 && median(near) < LEAST * usual ? { ...row, [side]: null } : row;
  });
}
