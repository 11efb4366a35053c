import { clothGridOf, heightOfPasses } from '../chart/clothGrid.ts';
import type { Piece } from '../model/piece.ts';
import type { Block } from '../model/plan.ts';
import { weavingWork } from './weavingWork.ts';

/**
 * Places of the blocks a weaver must learn anew since the rest was last planned: those whose turns, ends or start differ
 * from what the plan before would still have had her weave.
 * @param blocks the piece's own, as planned now.
 */
export function blocksAnew(piece: Piece, blocks: readonly Block[]): readonly number[] {
  const replans = piece.cloth.replans ?? [];
  const last = replans.at(-1);
  if (last === undefined) return [];
  const earlier = replans.slice(0, -1);
  const before = { ...piece, cloth: { ...piece.cloth, passHeight: last.passHeightBefore, replans: earlier } };
  const { passes } = last.measured;
  // The same cut through the work, with the beat the plan before went by.
  const height = heightOfPasses(clothGridOf(before, earlier.at(-1)?.measured ?? null), passes);
  const uncorrected = { ...last, measured: { passes, height } };
  const cloth = { ...before.cloth, replans: [...earlier, uncorrected] };
  return changedBlocks(weavingWork({ ...before, cloth }).blocks, blocks);
}

/** Places of the blocks among `now` that no block of `before` was like. */
export function changedBlocks(before: readonly Block[], now: readonly Block[]): readonly number[] {
  const known = new Map<string, number>();
  for (const block of before) known.set(asWoven(block), (known.get(asWoven(block)) ?? 0) + 1);
  return now.flatMap((block, place) => {
    const left = known.get(asWoven(block)) ?? 0;
    known.set(asWoven(block), left - 1);
    return left > 0 ? [] : [place];
  });
}

/** What the hands do: not which pass of the chart it falls on. */
const asWoven = ({ yarn, start, left, right, rows }: Block): string =>
  JSON.stringify([yarn, start.side, start.end, start.to, start.over, left, right, rows.length]);
