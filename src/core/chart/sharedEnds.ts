import type { AreaBudget } from './areaBudget.ts';
import type { Stepped } from './turnStepping.ts';

/** Turns each weft makes on the shared end before the other's, 0 for a border that shares no end. */
export interface SharedEnds {
  /** For the border left of this cell. */
  readonly turnsInTooth: (cell: number) => number;
  /** Whether the drawn line lies right of that border, so that the end right of it is the one to share. */
  readonly leansRight: (cell: number) => boolean;
  readonly areaOf: (cell: number) => number;
  readonly budget: AreaBudget;
}

/** A border that stands still for fewer turns than this is an ordinary step: it needs no shared end. */
const FEWEST_TURNS = 4;

/**
 * Shares an end along upright borders: both wefts turn on it in alternation, so no slit opens. The end shared is the one
 * the drawn line crosses or comes nearest to, which keeps the area, or the other where a shape would otherwise lose or
 * gain too much; each tooth is of whole turns, made where both wefts may step.
 * @param stepped changed in place, from `firstRow` up.
 * @returns 1 for every cell woven by the neighbour of the weft it belongs to.
 */
export function shareEnds(stepped: Stepped, firstRow: number, shared: SharedEnds): Uint8Array {
  const { ends, passes, labels, right } = stepped;
  const claimed = new Uint8Array(labels.length);
  for (let end = 1; end < ends; end++) {
    for (let foot = firstRow; foot < passes; ) {
      const cell = foot * ends + end;
      const turns = labels[cell] === labels[cell - 1] ? 0 : shared.turnsInTooth(cell);
      let head = foot + 1;
      if (turns === 0) {
        foot = head;
        continue;
      }
      while (
        head < passes &&
        sameBorder(stepped, head * ends + end) &&
        shared.turnsInTooth(head * ends + end) === turns
      ) {
        head++;
      }
      weaveTeeth(stepped, claimed, end, foot, head, turns, shared.leansRight(((foot + head) >> 1) * ends + end));
      foot = head;
    }
  }
  return claimed;

  /** Whether the border left of a cell stands between the same two wefts as one pass lower. */
  function sameBorder(grid: Stepped, cell: number): boolean {
    const below = cell - ends;
    return (
      labels[cell] !== labels[cell - 1] &&
      labels[cell] === labels[below] &&
      labels[cell - 1] === labels[below - 1] &&
      grid.right[cell] !== grid.right[below] &&
      grid.right[cell - 1] !== grid.right[below - 1]
    );
  }

  function weaveTeeth(
    grid: Stepped,
    taken: Uint8Array,
    end: number,
    foot: number,
    head: number,
    turns: number,
    leansRight: boolean,
  ): void {
    // The wefts may step where they part: on passes on which the left one travels left again, so the step is after.
    let first = foot;
    while (first < head && right[first * ends + end - 1] !== 1) first++;
    if (right[first * ends + end - 1] === right[first * ends + end]) return;
    if (head - first < 2 * FEWEST_TURNS) return;
    const near = leansRight ? end : end - 1;
    const takerOf = (give: number) => (give === end ? end - 1 : end);
    // The giver keeps an end of its own, and no end is shared twice.
    const isClear = (give: number, tooth: number): boolean => {
      const beyond = 2 * give - takerOf(give);
      if (beyond < 0 || beyond >= ends) return false;
      for (let row = tooth - 1; row <= tooth + 2 * turns; row++) {
        const base = row * ends;
        if (labels[base + beyond] !== labels[base + give]) return false;
        if (taken[base + give] === 1 || taken[base + beyond] === 1 || taken[base + takerOf(give)] === 1) return false;
      }
      return true;
    };
    for (let tooth = first + 2 * turns; tooth + 4 * turns <= head; tooth += 4 * turns) {
      if (!isClear(near, tooth)) continue;
      const giftOf = (give: number) => ({
        loses: shared.areaOf(tooth * ends + give),
        gains: shared.areaOf(tooth * ends + takerOf(give)),
        cells: 2 * turns,
      });
      const spoils = (give: number) => shared.budget.cost(giftOf(give)) > 0;
      const far = takerOf(near);
      const give = spoils(near) && !spoils(far) && isClear(far, tooth) ? far : near;
      shared.budget.give(giftOf(give));
      const taker = takerOf(give);
      for (let row = tooth; row < tooth + 2 * turns; row++) {
        const base = row * ends;
        labels[base + give] = labels[base + taker]!;
        grid.right[base + give] = right[base + taker]!;
        taken[base + give] = 1;
      }
    }
  }
}
