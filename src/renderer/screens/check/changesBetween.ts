import { edgeCourse } from '../../../core/compare/edgeCourse.ts';
import type { LoomReading } from '../../../core/model/check.ts';
import type { Piece } from '../../../core/model/piece.ts';
import type { Words } from '../../words/en.ts';
import { lengthSaid } from '../../words/figures.ts';
import { edgeAtFell } from './edgeRows.ts';
import { spread } from './probe.ts';

/** How each edge moved from one check to the next, with its give or take; what did not move is said to have held. */
export function changesBetween(earlier: LoomReading, later: LoomReading, piece: Piece, words: Words['check']): string {
  const { units } = piece;
  const moved: string[] = [];
  const held: string[] = [];
  for (const side of ['left', 'right'] as const) {
    const before = edgeAtFell(edgeCourse(earlier, piece, side));
    const after = edgeAtFell(edgeCourse(later, piece, side));
    if (before === null || after === null) continue;
    const change = after.value - before.value;
    const sigma = Math.hypot(before.sigma, after.sigma);
    if (Math.abs(change) <= 2 * sigma) held.push(words.edges[side]);
    else {
      // "3/16 in further in" would be read twice: inches are written out beside in and out.
      const figure = lengthSaid(Math.abs(change), units, 'edge').replace(/in$/, 'inch');
      moved.push(words.edgeMoved(words.edges[side], figure, change < 0, spread(sigma, units)));
    }
  }
  if (earlier.pass !== null && later.pass !== null) {
    const change = later.pass.value - earlier.pass.value;
    const sigma = Math.hypot(earlier.pass.sigma, later.pass.sigma);
    if (Math.abs(change) <= 2 * sigma) held.push(words.beat);
    else moved.push(words.beatMoved(change > 0));
  }
  return [...moved, ...(held.length > 0 ? [words.held(held)] : [])].join(' ');
}
