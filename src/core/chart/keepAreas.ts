import type { AreaBudget, Gift } from './areaBudget.ts';
import type { Stepped } from './turnStepping.ts';

/** Cells side by side on one row that the stepping gave from one area to one other. */
interface Moved extends Gift {
  readonly from: number;
  readonly to: number;
}

/**
 * Puts back what the stepping moved, where a shape would otherwise gain or lose more area than it may: a level edge that
 * came a pass late, mostly. An edge put back doesn't wait for its turn, so a weft ends there and another begins. The
 * fewest are put back that will do, the longest first.
 * @param stepped as turned for stepping; changed in place, from `firstRow` up.
 * @param drawn labels and areas as sampled, turned the same way.
 * @param areas of the stepped cells, turned the same way.
 * @returns whether anything was put back.
 */
export function keepAreas(
  budget: AreaBudget,
  stepped: Stepped,
  drawn: { readonly labels: Uint16Array; readonly areas: Uint16Array },
  areas: Uint16Array,
  firstRow: number,
): boolean {
  const { labels, right } = stepped;
  let changed = false;
  const moved = movedCells(stepped, drawn.labels, drawn.areas, areas, firstRow)
    .filter(({ loses, gains }) => budget.excess(loses) + budget.excess(gains) > 0)
    .sort((one, other) => other.cells - one.cells || one.from - other.from);
  for (const each of moved) {
    const beside = runToRejoin(stepped, drawn.labels[each.from]!, each);
    if (beside === -1 || budget.cost(each) >= 0) continue;
    labels.fill(drawn.labels[each.from]!, each.from, each.to);
    right.fill(right[beside]!, each.from, each.to);
    budget.give(each);
    changed = true;
  }
  return changed;
}

function movedCells(
  { ends, labels }: Stepped,
  drawnLabels: Uint16Array,
  drawnAreas: Uint16Array,
  areas: Uint16Array,
  firstRow: number,
): Moved[] {
  const moved: Moved[] = [];
  for (let from = firstRow * ends; from < labels.length; ) {
    let to = from + 1;
    if (labels[from] !== drawnLabels[from]) {
      while (
        to % ends !== 0 &&
        labels[to] === labels[from] &&
        drawnLabels[to] === drawnLabels[from] &&
        areas[to] === areas[from] &&
        drawnAreas[to] === drawnAreas[from]
      ) {
        to++;
      }
      moved.push({ from, to, loses: areas[from]!, gains: drawnAreas[from]!, cells: to - from });
    }
    from = to;
  }
  return moved;
}

/** A cell of the run that cells go back to; -1 where none lies beside them, or what they leave would be cut in two. */
function runToRejoin({ ends, labels, right }: Stepped, label: number, { from, to }: Moved): number {
  const before = from % ends === 0 ? -1 : labels[from - 1]!;
  const after = to % ends === 0 ? -1 : labels[to]!;
  // A point woven a pass taller lies in the run it is given back to.
  if (before === label && after === label) return right[from - 1] === right[to] ? to : -1;
  if (before === label && after === labels[from]) return from - 1;
  return after === label && before === labels[from] ? to : -1;
}
