import type { Join } from '../model/plan.ts';
import type { Weft, WeftRow } from './wefts.ts';

export interface WeftLengths {
  /** mm of weft for one end, its bending counted. */
  readonly perEnd: number;
  /** mm a turn takes beyond its two passes. */
  readonly turn: number;
  /** A hand-wound working length, mm, and the tail left at either end of it. */
  readonly working: number;
  readonly tail: number;
}

/** Ends kept between a join and the edge of its area, where a tail would work loose. */
const FROM_EDGE = 2;
/** Passes within which two joins don't lie on the same end. */
const STAGGER = 8;

/** Ends of a row where a join may lie, in the order the weft reaches them: inside, or the middle of a narrow row. */
function joinPlaces(row: WeftRow): number[] {
  const width = row.high - row.low + 1;
  const margin = Math.min(FROM_EDGE, Math.floor((width - 1) / 2));
  const places: number[] = [];
  for (let end = row.low + margin; end <= row.high - margin; end++) places.push(end);
  return row.right ? places : places.reverse();
}

/**
 * Where one weft runs out and the next length is joined in: as late as it reaches, moved back to an end inside the area,
 * away from its edges (and so from selvedges and slits), and not above the join before.
 * @returns rows of the weft with the end on which the new length begins.
 */
export function joinsOfWeft(
  weft: Weft,
  lengths: WeftLengths,
): readonly { readonly row: number; readonly end: number }[] {
  const joins: { row: number; end: number }[] = [];
  const usable = Math.max(lengths.working - 2 * lengths.tail, lengths.perEnd);
  let used = 0;
  for (let row = 0; row < weft.rows.length; row++) {
    const here = weft.rows[row]!;
    const length = (here.high - here.low + 1) * lengths.perEnd + lengths.turn;
    if (used + length <= usable) {
      used += length;
      continue;
    }
    const reached = Math.floor((usable - used) / lengths.perEnd);
    const last = joins.at(-1);
    const lastPass = last === undefined ? Number.NEGATIVE_INFINITY : weft.rows[last.row]!.pass;
    const clear = (end: number): boolean =>
      last === undefined || here.pass - lastPass > STAGGER || Math.abs(end - last.end) >= FROM_EDGE;
    let joinRow = row;
    let place = joinPlaces(here)
      .filter((end) => Math.abs(end - (here.right ? here.low : here.high)) < reached)
      .filter(clear)
      .at(-1);
    if (place === undefined && row > 0 && (last === undefined || last.row < row - 1)) {
      joinRow = row - 1;
      const places = joinPlaces(weft.rows[joinRow]!);
      place = places.filter(clear).at(-1) ?? places.at(-1);
    }
    if (place === undefined) {
      joinRow = row;
      place = joinPlaces(here)[0]!;
    }
    joins.push({ row: joinRow, end: place });
    // The new length weaves the rest of the row it begins on, and the rows after.
    const began = weft.rows[joinRow]!;
    const rest = (began.right ? began.high - place : place - began.low) + 1;
    used = rest * lengths.perEnd + lengths.turn;
    row = joinRow;
  }
  return joins;
}

export const byOrder = (one: Join, other: Join): number => one.block - other.block || one.pass - other.pass;
